import type { PhonesDescription } from '#engine';
import { writeForPeople } from '#units';
import type { Change, Shelf, Situation } from './situation.ts';

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
  for (const [name, earpiece] of Object.entries(shelf.earpieces)) {
    phones(`phones.${name}`, `use the earpiece "${name}"`, { ...set.phones, earpiece });
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
  if (set.phones.transformer) {
    const { transformer: _, ...bare } = set.phones;
    phones('phones.transformer.none', 'leave the transformer out', bare);
  }
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
