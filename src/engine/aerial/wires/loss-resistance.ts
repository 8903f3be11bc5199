import { SPEED_OF_LIGHT } from '../../constants.ts';
import { loadImpedance } from './load-impedance.ts';
import { type Discretised, halfCurrent, selfProducts, wireImpedances } from './solve-wires.ts';

/** Currents of the bases: of one solution, or of one sample of a band. */
export interface BaseCurrents {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/**
 * Hermitian form of the heat in the wires' metal: sum of R' integral of conj(I_a) I_b dl over all wires [W], for every two of the given
 * currents. With one set of rms currents, the power itself.
 *
 * @returns for sets a, b in turn the real and imaginary part
 */
export function metalHeat(d: Discretised, frequency: number, sets: readonly BaseCurrents[]): Float64Array {
  const n = sets.length;
  const out = new Float64Array(2 * n * n);
  const k = (2 * Math.PI * frequency) / SPEED_OF_LIGHT;
  const perMetre = wireImpedances(d, frequency);
  for (let s = 0; s < d.mesh.segments; s++) {
    const resistance = perMetre[d.mesh.wire[s]!]!.re;
    if (resistance === 0) continue;
    const { same, other } = selfProducts(k, d.mesh.length[s]!);
    const ends = sets.map(({ re, im }) => [halfCurrent(d.mesh, 2 * s, re, im), halfCurrent(d.mesh, 2 * s + 1, re, im)] as const);
    for (let a = 0; a < n; a++)
      for (let b = 0; b < n; b++) {
        const [p0, p1] = ends[a]!;
        const [q0, q1] = ends[b]!;
        const re = same * (p0.re * q0.re + p0.im * q0.im + p1.re * q1.re + p1.im * q1.im);
        const im = same * (p0.re * q0.im - p0.im * q0.re + p1.re * q1.im - p1.im * q1.re);
        const crossRe = other * (p0.re * q1.re + p0.im * q1.im + p1.re * q0.re + p1.im * q0.im);
        const crossIm = other * (p0.re * q1.im - p0.im * q1.re + p1.re * q0.im - p1.im * q0.re);
        const at = 2 * (a * n + b);
        out[at] = out[at]! + resistance * (re + crossRe);
        out[at + 1] = out[at + 1]! + resistance * (im + crossIm);
      }
  }
  return out;
}

/** Power turned to heat in the loads, for rms currents [W]. */
export function loadHeat(d: Discretised, frequency: number, re: Float64Array, im: Float64Array): number {
  let power = 0;
  for (const { half, index } of d.loads) {
    const current = halfCurrent(d.mesh, half, re, im);
    power += loadImpedance(d.structure.loads[index]!, frequency).re * (current.re ** 2 + current.im ** 2);
  }
  return power;
}

/** Power turned to heat in wires and loads, for rms currents of the bases [W]; by the square of the feed's current, the loss resistance. */
export function heat(d: Discretised, frequency: number, re: Float64Array, im: Float64Array): number {
  return metalHeat(d, frequency, [{ re, im }])[0]! + loadHeat(d, frequency, re, im);
}
