import type { PhonesDescription } from '#engine';
import { writeForPeople } from '#units';
import type { Change, Shelf, Situation } from './situation.ts';

/** Resistor that gives a piezo's direct current a way [ohm]: common practice. */
const USUAL_LOAD = 470e3;

/** Other parts from the shelf, and what can be done after the detector. */
export function partChanges(s: Situation, shelf: Shelf): Change[] {
  const out: Change[] = [];
  const { set } = s;
  for (const [name, detector] of Object.entries(shelf.detectors))
    out.push({
      key: `detector.${name}`,
      words: `use the detector "${name}"`,
      situation: { ...s, set: { ...set, detector: { ...detector, temperature: set.detector.temperature } } },
    });
  const phones = (key: string, words: string, next: PhonesDescription): void => {
    out.push({ key, words, situation: { ...s, set: { ...set, phones: next } }, keepsDial: true });
  };
  const { transformer: fitted, ...bare } = set.phones;
  for (const [name, earpiece] of Object.entries(shelf.earpieces)) {
    const through = fitted ? ' through the transformer there is' : '';
    phones(`phones.${name}`, `use the earpiece "${name}"${through}`, { ...set.phones, earpiece });
    // without a transformer a piezo leaves the direct current no way; a magnetic one is a way itself
    const open = earpiece.kind === 'piezo' && bare.load === undefined && bare.choke === undefined;
    if (fitted || open)
      phones(
        `phones.${name}`,
        `use the earpiece "${name}"${fitted ? ' without the transformer' : ''}${open ? `, ${ohms(USUAL_LOAD)} across it` : ''}`,
        {
          ...bare,
          earpiece,
          ...(open ? { load: USUAL_LOAD } : {}),
        },
      );
    // a piezo earpiece is fed by high impedance already
    if (earpiece.kind === 'magnetic')
      for (const [by, transformer] of Object.entries(shelf.transformers))
        phones(`phones.${name}+${by}`, `use the earpiece "${name}" through the transformer "${by}"`, {
          ...set.phones,
          earpiece,
          transformer,
        });
  }
  for (const [name, transformer] of Object.entries(shelf.transformers))
    phones(`phones.transformer.${name}`, `put the transformer "${name}" before the earpiece`, { ...set.phones, transformer });
  if (fitted) phones('phones.transformer.none', 'leave the transformer out', bare);
  const { load } = set.phones;
  if (load !== undefined) {
    phones('phones.load.up', `raise the load resistor to ${ohms(2 * load)}`, { ...set.phones, load: 2 * load });
    phones('phones.load.down', `lower the load resistor to ${ohms(load / 2)}`, { ...set.phones, load: load / 2 });
  }
  const { room } = s.listener.ear;
  const quieter =
    room.kind === 'noise-criterion'
      ? { ...room, rating: Math.max(0, room.rating - 10) }
      : room.kind === 'a-weighted'
        ? { ...room, level: room.level - 10 }
        : { ...room, bands: room.bands.map((b) => ({ ...b, level: b.level - 10 })) };
  out.push({
    key: 'ear.quieter',
    words: 'listen in a room 10 dB quieter',
    situation: { ...s, listener: { ...s.listener, ear: { ...s.listener.ear, room: quieter } } },
    keepsDial: true,
  });
  return out;
}

const ohms = (r: number): string => writeForPeople(r, 'resistance', 2);
