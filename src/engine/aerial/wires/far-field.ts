import { SPEED_OF_LIGHT } from '../../constants.ts';
import { C } from '../../numeric/index.ts';
import type { Arrival } from '../model.ts';
import { gainOf } from '../source-figures.ts';
import { type Components, currentMoment } from './effective-length.ts';
import { groundReflection } from './ground-reflection.ts';
import type { Discretised, WireSolution } from './solve-wires.ts';

/** Gain over isotropic, of each component and of both together [dB]; null where nothing at all is radiated. */
export interface Gain {
  readonly total: number | null;
  readonly horizontal: number | null;
  readonly vertical: number | null;
}

/** Below this a gain is only the rounding of sums that cancel. */
const ROUNDING = 1e-20;

const decibel = (power: number): number | null => (power > ROUNDING ? 10 * Math.log10(power) : null);

/**
 * Far field of the aerial and its ground, by the current into the feed [m]: the effective length, to which the ground's reflection is added.
 *
 * With a ground this is the pattern a distant station sees, for drawings and for comparison with tables. It is not what the chain takes: see
 * `currentMoment`. Nothing goes below the horizon where there is a ground.
 */
export function farField(d: Discretised, s: WireSolution, arrival: Arrival): Components {
  const moment = (a: Arrival): Components => {
    const n = currentMoment(d.mesh, d.feedPoint, s.frequency, s.re, s.im, a);
    return { horizontal: C.div(n.horizontal, s.admittance), vertical: C.div(n.vertical, s.admittance) };
  };
  const { ground } = d.structure;
  if (ground.kind === 'free-space') return moment(arrival);
  if (Math.sin(arrival.elevation) < 0) return { horizontal: C.ZERO, vertical: C.ZERO };
  const direct = moment(arrival);
  const below = moment({ azimuth: arrival.azimuth, elevation: -arrival.elevation });
  const k = (2 * Math.PI * s.frequency) / SPEED_OF_LIGHT;
  const delay = C.cis(-2 * k * d.feedPoint.z * Math.sin(arrival.elevation));
  const reflection = groundReflection(ground, s.frequency, arrival.elevation);
  const sum = (key: keyof Components) => C.add(direct[key], C.mul(C.mul(below[key], delay), reflection[key]));
  return { horizontal: sum('horizontal'), vertical: sum('vertical') };
}

/**
 * Gain with respect to the power into the feed.
 *
 * G = pi eta |N|^2 / (lambda^2 R), N the far field by the feed's current, R the terminal resistance.
 */
export function gain(d: Discretised, s: WireSolution, arrival: Arrival): Gain {
  const wavelength = SPEED_OF_LIGHT / s.frequency;
  const resistance = C.inv(s.admittance).re;
  const { horizontal, vertical } = farField(d, s, arrival);
  const h = gainOf(C.abs2(horizontal), resistance, wavelength);
  const v = gainOf(C.abs2(vertical), resistance, wavelength);
  return { total: decibel(h + v), horizontal: decibel(h), vertical: decibel(v) };
}
