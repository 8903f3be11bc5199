import { type AerialDescription, type Signal, SPEED_OF_LIGHT } from '#engine';
import { beamFor, dipoleFor } from './new-aerials.ts';
import type { Change, Situation } from './situation.ts';
import { wiresChanges } from './wires-changes.ts';

const VHF = 30e6;

/** What can be done to the aerial and where it stands, for one station. */
export function aerialChanges(s: Situation, signal: Signal): Change[] {
  const out: Change[] = [];
  const { station, bearing } = signal.received;
  const { aerial } = s.set;
  const { height } = s.place.site;
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
  if (vhf && height < 15) out.push({ key: 'place.higher', words: `raise the aerial by ${RAISED} m`, situation: raised(s) });
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
  if (aerial.kind === 'wires') for (const c of wiresChanges(aerial, station, bearing)) put(c.key, c.words, c.aerial);
  const small = aerial.kind === 'wires' ? SMALL_SHAPES.has(aerial.shape.kind) : aerial.kind === 'whip' || aerial.kind === 'loop';
  if (vhf && coupled && small) {
    const dipole = dipoleFor(station, bearing, height);
    put('aerial.dipole', `put up a half-wave dipole (${dipole.length.toFixed(2)} m)`, dipole.aerial);
  }
  if (vhf && coupled && !isBeam(aerial)) {
    const beam = beamFor(station, bearing, height);
    put('aerial.beam', `put up a three-element beam (boom ${beam.boom.toFixed(1)} m) pointed at the mast`, beam.aerial);
  }
  return out;
}

const SMALL_SHAPES: ReadonlySet<string> = new Set(['rod', 'round-loop', 'square-loop']);

/** A beam by its elements, or by what it does: an aerial of more than 8 dBi is one. */
const isBeam = (aerial: AerialDescription): boolean =>
  aerial.kind === 'wires' ? aerial.shape.kind === 'beam' : aerial.kind === 'electrical' && (aerial.gain ?? 0) >= 8;

/** How far one climbs [m]. */
const RAISED = 3;

/** An aerial of wires takes its own height along; one on a wire to earth stays where its wire lets it. */
function raised(s: Situation): Situation {
  const { aerial } = s.set;
  const place = { ...s.place, site: { ...s.place.site, height: s.place.site.height + RAISED } };
  const earthed = aerial.kind === 'wires' && aerial.shape.kind === 'rod' && aerial.shape.against.kind === 'earth-wire';
  if (aerial.kind !== 'wires' || earthed) return { ...s, place };
  return { ...s, place, set: { ...s.set, aerial: { ...aerial, height: aerial.height + RAISED } } };
}
