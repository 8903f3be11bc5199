import { type AerialDescription, type Signal, SPEED_OF_LIGHT } from '#engine';
import type { Change, Situation } from './situation.ts';

const VHF = 30e6;

/** What can be done to the aerial and where it stands, for one station. */
export function aerialChanges(s: Situation, signal: Signal): Change[] {
  const out: Change[] = [];
  const { station, bearing } = signal.received;
  const { aerial } = s.set;
  const wavelength = SPEED_OF_LIGHT / station.frequency;
  const vhf = station.frequency >= VHF;
  const upright = station.polarisation === 'vertical';
  const orientation = upright ? ({ kind: 'vertical' } as const) : ({ kind: 'horizontal', broadside: bearing } as const);
  const put = (key: string, words: string, next: AerialDescription): void => {
    out.push({ key, words, situation: { ...s, set: { ...s.set, aerial: next } } });
  };
  if (s.place.site.building !== undefined) {
    const { building: _, ...site } = s.place.site;
    out.push({ key: 'place.outdoors', words: 'take the aerial out of doors', situation: { ...s, place: { ...s.place, site } } });
  }
  if (vhf && s.place.site.height < 15)
    out.push({
      key: 'place.higher',
      words: 'raise the aerial by 3 m',
      situation: { ...s, place: { ...s.place, site: { ...s.place.site, height: s.place.site.height + 3 } } },
    });
  if (aerial.kind === 'dipole' || aerial.kind === 'electrical')
    put('aerial.turn', upright ? 'stand the aerial upright' : 'lay the aerial level, broadside to the mast', { ...aerial, orientation });
  if (aerial.kind === 'loop' || aerial.kind === 'coil') {
    const axis = upright ? ({ kind: 'horizontal', plane: bearing } as const) : ({ kind: 'vertical' } as const);
    put('aerial.turn', upright ? 'stand the loop upright, its edge to the mast' : 'lay the loop flat', { ...aerial, axis });
  }
  if (aerial.kind === 'dipole' && Math.abs(aerial.length / wavelength - 0.47) > 0.02)
    put('aerial.cut', `cut the dipole to ${(0.475 * wavelength).toFixed(2)} m for this station`, { ...aerial, length: 0.475 * wavelength });
  if (aerial.kind === 'whip' && aerial.counterpoise.kind === 'set')
    put('aerial.dropWire', 'hang a drop wire as long as the rod', {
      ...aerial,
      counterpoise: { kind: 'drop-wire', length: aerial.length, diameter: 1e-3 },
    });
  const coupled = s.set.tank.aerialCoupling !== undefined;
  if (vhf && coupled && (aerial.kind === 'whip' || aerial.kind === 'loop'))
    put('aerial.dipole', `put up a half-wave dipole (${(0.475 * wavelength).toFixed(2)} m)`, {
      kind: 'dipole',
      length: 0.475 * wavelength,
      diameter: 4e-3,
      metal: 'copper',
      orientation,
    });
  if (vhf && coupled && (aerial.kind !== 'electrical' || (aerial.gain ?? 0) < 8))
    // NBS TN 688: boom of 0.4 wavelength, 7.1 dB over a dipole; its front-to-back and a matched 75 ohm are an estimate
    put('aerial.beam', `put up a three-element beam (boom ${(0.4 * wavelength).toFixed(1)} m) pointed at the mast`, {
      kind: 'electrical',
      impedance: [{ frequency: station.frequency, resistance: 75, reactance: 0 }],
      gain: 9.25,
      orientation: upright ? { kind: 'vertical' } : { kind: 'horizontal', broadside: bearing },
      // given values of an upright aerial have no bearing, so no front
      frontToBack: upright ? 0 : 8,
    });
  return out;
}
