import { SPEED_OF_LIGHT } from '../../constants.ts';
import { GivenError } from '../../given-error.ts';
import { C, type Complex, nelderMead } from '../../numeric/index.ts';
import { mustBeNumber, mustBePositive } from '../given-checks.ts';
import { beamStart } from './beam-table.ts';
import type { Driven, WireShape } from './description.ts';
import { gain } from './far-field.ts';
import { layOut } from './joints.ts';
import { frontToBack } from './pattern.ts';
import { BASE_DENSITY, countsByDensity } from './segment-counts.ts';
import { beam } from './shapes/beam.ts';
import { discretise, solveWires } from './solve-wires.ts';
import type { WireMetal } from './structure.ts';

type Beam = Extract<WireShape, { kind: 'beam' }>;

/** What a beam is wanted to do. */
export interface BeamWish {
  /** [Hz] */
  readonly frequency: number;
  /** first element to last [m] */
  readonly boom: number;
  readonly elements: number;
  readonly diameter: number;
  readonly metal: WireMetal;
  readonly polarisation: Beam['polarisation'];
  readonly bearing: number;
  readonly driven: Driven;
  /** greatest gain, the driven element at resonance; or the greatest power into a given load, mismatch counted [ohm] */
  readonly goal: { readonly kind: 'gain' } | { readonly kind: 'impedance'; readonly resistance: number; readonly reactance: number };
  /** beams tried at most; left out, as many as the search asks for until it rests */
  readonly trials?: number;
}

/** What one beam does at the frequency. */
export interface BeamResult {
  readonly shape: Beam;
  /** forward, over isotropic [dB] */
  readonly gain: number;
  /** [dB]; null where nothing goes back */
  readonly frontToBack: number | null;
  /** [ohm] */
  readonly impedance: Complex;
  /** part of the available power that goes into the load of the goal; 1 where the goal is gain */
  readonly match: number;
}

export interface BeamDesign {
  readonly start: BeamResult;
  readonly best: BeamResult;
  readonly evaluations: number;
  /** the best beam with one element cut wrong by `error` [m], and with all of them */
  readonly cutting: {
    readonly error: number;
    readonly elements: readonly { readonly element: string; readonly short: BeamResult; readonly long: BeamResult }[];
    readonly all: { readonly short: BeamResult; readonly long: BeamResult };
  };
}

/** How well a builder cuts [m]. */
const CUTTING_ERROR = 0.002;
const LEAST_ELEMENTS = 2;
const MOST_ELEMENTS = 12;
/** Bounds of the search [wavelengths]. */
const SHORTEST = 0.36;
const LONGEST = 0.54;
const CLOSEST = 0.04;
/** Evaluations for each free dimension: the simplex needs some tens, and starts anew. */
const EVALUATIONS_EACH = 120;
/** Spread of the gain over the simplex at which the search rests, relative: some 0.0002 dB. */
const RESTING = 2e-5;

/**
 * Lengths and places of a beam's elements for the greatest gain, or for the most power into a load.
 *
 * From the published table for that boom and thickness (beam-table.ts), the lengths of all elements and the places of those between the ends are varied by
 * the simplex method, each beam solved anew. The number of segments is held, so that a change of length is never a change of mesh.
 *
 * @throws GivenError where the wish cannot be
 * Holds for: a boom that insulates the elements. As sharply tuned as the result is, the solver's own 0.6 % of length (see convergence.ts) is several
 * millimetres at VHF: cut a little long and trim.
 */
export function designBeam(wish: BeamWish): BeamDesign {
  check(wish);
  const wavelength = SPEED_OF_LIGHT / wish.frequency;
  const first = beamStart(wish.boom / wavelength, wish.elements, wish.diameter / wavelength);
  const n = wish.elements;
  const ends = { from: first.places[0]!, to: first.places[n - 1]! };
  // free: all lengths; and the places of all elements between the first and the last, from the first
  const start = Float64Array.from([...first.lengths, ...first.places.slice(1, -1).map((p) => p - ends.from)]);
  const span = ends.to - ends.from;
  const shapeOf = (x: Float64Array): Beam | null => {
    const places = [0, ...x.slice(n), span];
    for (let i = 1; i < n; i++) if (places[i]! - places[i - 1]! < CLOSEST) return null;
    return beamShape(wish, [...x.slice(0, n)], places, wavelength);
  };
  const counts = meshCounts(wish, shapeOf(start)!);
  const evaluate = (shape: Beam) => evaluateBeam(wish, shape, counts);
  const price = (x: Float64Array): number => {
    const shape = shapeOf(x);
    const result = shape && evaluate(shape);
    // worse than any beam, yet finite, so that the simplex turns back
    return result ? -worth(wish, result) : 1e3;
  };
  const lower = start.map((_, i) => (i < n ? SHORTEST : CLOSEST));
  const upper = start.map((_, i) => (i < n ? LONGEST : span - CLOSEST));
  const step = start.map((_, i) => (i < n ? 0.01 : 0.03));
  const found = nelderMead(price, start, step, lower, upper, RESTING, wish.trials ?? EVALUATIONS_EACH * start.length);
  const best = shapeOf(found.x)!;
  const cut = (which: (i: number) => boolean, error: number) => {
    const lengths = [...found.x.slice(0, n)].map((l, i) => l + (which(i) ? error / wavelength : 0));
    return evaluate(beamShape(wish, lengths, [0, ...found.x.slice(n), span], wavelength));
  };
  const names = Array.from({ length: n }, (_, i) => (i === 0 ? 'reflector' : i === 1 ? 'driven element' : `director ${i - 1}`));
  return {
    start: evaluate(shapeOf(start)!),
    best: evaluate(best),
    evaluations: found.evaluations,
    cutting: {
      error: CUTTING_ERROR,
      elements: names.map((element, e) => ({
        element,
        short: cut((i) => i === e, -CUTTING_ERROR),
        long: cut((i) => i === e, CUTTING_ERROR),
      })),
      all: { short: cut(() => true, -CUTTING_ERROR), long: cut(() => true, CUTTING_ERROR) },
    },
  };
}

function check(wish: BeamWish): void {
  mustBePositive('beam.frequency', wish.frequency, 'Hz');
  mustBePositive('beam.boom', wish.boom, 'm');
  mustBePositive('beam.diameter', wish.diameter, 'm');
  mustBeNumber('beam.bearing', wish.bearing, 'rad');
  if (!(Number.isInteger(wish.elements) && wish.elements >= LEAST_ELEMENTS && wish.elements <= MOST_ELEMENTS))
    throw new GivenError(
      'beam.elements',
      `${wish.elements}`,
      `the search is for ${LEAST_ELEMENTS} to ${MOST_ELEMENTS} elements`,
      'Give a whole number between.',
    );
  const wavelength = SPEED_OF_LIGHT / wish.frequency;
  if (!(wish.boom > 1.5 * CLOSEST * (wish.elements - 1) * wavelength && wish.boom < 0.5 * wish.elements * wavelength))
    throw new GivenError(
      'beam.boom',
      `${wish.boom} m`,
      `${wish.elements} elements at ${wavelength.toPrecision(3)} m wavelength would stand too close or too far apart`,
      'Give a boom of about 0.1 to 0.4 wavelength an element.',
    );
  if (!(wish.diameter < 0.02 * wavelength))
    throw new GivenError(
      'beam.diameter',
      `${wish.diameter} m`,
      'it is no thin wire at this frequency',
      'Give less than 2 % of the wavelength.',
    );
  if (wish.goal.kind === 'impedance') {
    mustBePositive('beam.goal.resistance', wish.goal.resistance, 'ohm');
    mustBeNumber('beam.goal.reactance', wish.goal.reactance, 'ohm');
  }
}

/** @param lengths, places - [wavelengths]; reflector first, places from it */
function beamShape(wish: BeamWish, lengths: readonly number[], places: readonly number[], wavelength: number): Beam {
  return {
    kind: 'beam',
    reflector: { length: lengths[0]! * wavelength, behind: places[1]! * wavelength },
    driven: { length: lengths[1]! * wavelength, element: wish.driven },
    directors: lengths.slice(2).map((l, i) => ({ length: l * wavelength, ahead: (places[i + 2]! - places[1]!) * wavelength })),
    diameter: wish.diameter,
    metal: wish.metal,
    polarisation: wish.polarisation,
    bearing: wish.bearing,
  };
}

const structureOf = (shape: Beam) => ({ ...beam(shape, { x: 0, y: 0, z: 0 }), ground: { kind: 'free-space' } as const });

function meshCounts(wish: BeamWish, shape: Beam): readonly number[] {
  return countsByDensity(layOut(structureOf(shape)), wish.frequency, BASE_DENSITY);
}

function evaluateBeam(wish: BeamWish, shape: Beam, counts: readonly number[]): BeamResult {
  const structure = structureOf(shape);
  const d = discretise(structure, layOut(structure), counts);
  const s = solveWires(d, wish.frequency)!;
  const ahead = { azimuth: wish.bearing, elevation: 0 };
  const impedance = C.inv(s.admittance);
  return {
    shape,
    gain: gain(d, s, ahead).total!,
    frontToBack: frontToBack(d, s, ahead),
    impedance,
    match: wish.goal.kind === 'gain' ? 1 : matchTo(impedance, wish.goal),
  };
}

/** Part of the available power a load takes: 4 R R_L / |Z + Z_L|^2. */
function matchTo(z: Complex, load: { readonly resistance: number; readonly reactance: number }): number {
  return (4 * z.re * load.resistance) / ((z.re + load.resistance) ** 2 + (z.im + load.reactance) ** 2);
}

/** What the search makes the most of [dB]: gain, less the mismatch; for gain alone, less a little for a driven element off resonance. */
function worth(wish: BeamWish, r: BeamResult): number {
  if (wish.goal.kind === 'impedance') return r.gain + 10 * Math.log10(Math.max(r.match, 1e-12));
  // the driven element hardly changes the gain: a mild pull brings it to resonance
  const detuned = r.impedance.im / r.impedance.re;
  return r.gain - 0.05 * Math.min(detuned * detuned, 4);
}
