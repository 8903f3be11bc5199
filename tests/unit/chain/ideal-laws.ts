import { type DescribingFunction, harmonicBalance, Network } from '#engine';

/** Textbook detector laws that draw no current from the tank: output equals the square of the amplitude, or the amplitude itself. */
export const squareLaw: DescribingFunction = {
  at(a, _v, out) {
    out.set([a * a, 0, 2 * a, 0, 0, 0]);
  },
  current: (v) => v * v,
};
export const linearLaw: DescribingFunction = {
  at(a, _v, out) {
    out.set([a, 0, 1, 0, 0, 0]);
  },
  current: (v) => Math.abs(v),
};

const F0 = 1e8;
/** So sharp that the textbook's x = 2 Q df / f0 and the exact circuit agree to a part in a million. */
const Q = 1e6;
const R = 1e3;

/** |V| of a parallel tuned circuit fed by a current that gives one volt at resonance, at detuning x. */
const tank = new Network([
  { kind: 'current', name: 'source', a: 'top', b: 'earth', re: 1 / R, im: 0 },
  { kind: 'resistor', name: 'loss', a: 'top', b: 'earth', resistance: R },
  { kind: 'capacitor', name: 'c', a: 'top', b: 'earth', capacitance: Q / (R * 2 * Math.PI * F0) },
  { kind: 'windings', name: 'l', windings: [{ name: 'coil', a: 'top', b: 'earth' }], inductance: [[R / (Q * 2 * Math.PI * F0)]] },
]);
const out = new Float64Array(4);
export function resonanceCurve(x: number): number {
  tank.thevenin(F0 * (1 + x / (2 * Q)), tank.node('top'), out);
  return Math.hypot(out[0]!, out[1]!);
}

/** Steady harmonics of slope detection at detuning x, peak normalised deviation d, through the engine's network and harmonic balance. */
export function slopeHarmonics(law: DescribingFunction, x: number, d: number, samples = 64): number[] {
  const amplitude = Float64Array.from({ length: samples }, (_, k) => resonanceCurve(x + d * Math.cos((2 * Math.PI * k) / samples)));
  const zero = new Float64Array(samples);
  const load = Array.from({ length: samples / 2 + 1 }, () => ({ re: 1, im: 0 }));
  const balance = harmonicBalance(law, { amplitude, zRe: zero, zIm: zero }, load);
  return balance.harmonics.map((h, k) => (k === 0 ? h.re : Math.hypot(h.re, h.im)));
}
