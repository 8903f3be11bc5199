import { GivenError } from '../../given-error.ts';
import { C } from '../../numeric/index.ts';
import type { AerialAt, AerialModel, Arrival } from '../model.ts';
import { type Band, interpolate, momentsOf, solveBand, sourceAt } from './band.ts';
import { bandEdges, bandNumber } from './band-plan.ts';
import { type Converged, converge } from './convergence.ts';
import type { WiresDescription } from './description.ts';
import { type Layout, layOut } from './joints.ts';
import type { Discretised, WireSolution } from './solve-wires.ts';
import type { WireStructure } from './structure.ts';
import { wireFigures } from './wire-figures.ts';
import { wireRemarks } from './wire-remarks.ts';
import { wireStructure } from './wire-structure.ts';

/** An aerial computed from its wires: the source the chain asks, and what is behind it for drawings and tables. */
export interface WireAerial extends AerialModel {
  readonly structure: WireStructure;
  /** the same structure cut and solved at one frequency, for patterns and currents */
  solved(frequency: number): { readonly discretised: Discretised; readonly solution: WireSolution };
  /** how finely it is cut at a frequency, and how well that does */
  cutting(frequency: number): Converged;
  /** solves all bands that a range of frequencies [Hz] touches, so that `at` is quick from then on */
  prepare(from: number, to: number): void;
}

/** One band solved, with what has been asked of it. */
interface Prepared {
  readonly converged: Converged;
  readonly band: Band;
  /** integrals of the currents towards arrivals asked before */
  readonly moments: Map<string, Float64Array>;
}

/** Arrivals remembered; a place has a few dozen stations. */
const MOST_ARRIVALS = 256;

/**
 * Any aerial of thin wires, by the method of moments.
 *
 * Impedance and effective length are interpolated in bands (see band.ts), each solved when it is first asked for. The effective length is
 * that of the wires in free space: reflection from the ground belongs to `place`. Where the description has a perfect ground, the currents, and so the
 * impedance, are those over it; an aerial joined to that ground stands in the field as it is at the surface (see AerialAt).
 *
 * Left out: the body of the listener, proximity effect between close turns, anything that is not in the list of wires.
 *
 * @throws GivenError where the wires cannot be; on asking for a frequency at which they would need too many unknowns
 * Source: reference/antennas.md section 5; Richmond, NASA CR-2396 (1974); Richmond & Geary, IEEE Trans. AP-23 (1975) 412.
 */
export function wireAerial(description: WiresDescription): WireAerial {
  const { shape } = description;
  // against the set or a hanging wire whatever else is near the set takes part of the current
  const handled = shape.kind === 'rod' && (shape.against.kind === 'box' || shape.against.kind === 'drop-wire');
  return wireAerialOf(wireStructure(description), description.segments ?? null, handled ? [BODY] : []);
}

const BODY = 'a hand on the set, headphone leads or a body within half a metre are part of such an aerial and are left out';

/**
 * As `wireAerial`, from the bare wires.
 *
 * @param segments - forced number, or null to choose
 * @param standingRemarks - remarks that hold at every frequency
 */
export function wireAerialOf(structure: WireStructure, segments: number | null, standingRemarks: readonly string[] = []): WireAerial {
  const layout = layOut(structure);
  const standing = layout.nodes.some((n) => n.grounded);
  const bands = new Map<number, Prepared>();
  const prepared = (frequency: number): Prepared => {
    if (!(frequency > 0 && Number.isFinite(frequency)))
      throw new GivenError('frequency', `${frequency} Hz`, 'an aerial is asked about a frequency', 'Give one above zero.');
    const number = bandNumber(frequency);
    const known = bands.get(number);
    if (known) return known;
    const made = solveNumbered(structure, layout, segments, number);
    bands.set(number, made);
    return made;
  };
  const at = (frequency: number, arrival: Arrival): AerialAt => {
    const p = prepared(frequency);
    return sourceAt(p.band, frequency, remembered(p, arrival, standing));
  };
  const solved = (frequency: number) => {
    const p = prepared(frequency);
    return { discretised: p.converged.discretised, solution: interpolate(p.band, frequency) };
  };
  const model: WireAerial = {
    method: 'method of moments',
    source: 'piecewise-sinusoidal Galerkin method, Richmond, NASA CR-2396 (1974)',
    structure,
    at,
    solved,
    cutting: (frequency) => prepared(frequency).converged,
    prepare(from, to) {
      for (let n = bandNumber(from); n <= bandNumber(to); n++) prepared(Math.sqrt(bandEdges(n).from * bandEdges(n).to));
    },
    remarks: (frequency) => [...standingRemarks, ...wireRemarks(structure, prepared(frequency).converged, frequency)],
    figures: (frequency, arrival) => {
      const step = 1e-4 * frequency;
      const slope = C.scale(C.sub(at(frequency + step, arrival).impedance, at(frequency - step, arrival).impedance), 1 / (2 * step));
      return wireFigures(at(frequency, arrival), solved(frequency), prepared(frequency).converged, slope, arrival);
    },
  };
  return model;
}

function solveNumbered(structure: WireStructure, layout: Layout, segments: number | null, number: number): Prepared {
  const { from, to } = bandEdges(number);
  const converged = converge(structure, layout, to, segments);
  return { converged, band: solveBand(converged.discretised, from, to), moments: new Map() };
}

function remembered(p: Prepared, arrival: Arrival, standing: boolean): Float64Array {
  const key = `${arrival.azimuth} ${arrival.elevation}`;
  const known = p.moments.get(key);
  if (known) return known;
  if (p.moments.size >= MOST_ARRIVALS) p.moments.clear();
  const made = momentsOf(p.band, arrival, standing);
  p.moments.set(key, made);
  return made;
}
