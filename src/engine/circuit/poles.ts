import { C, type Complex, eigenvalues, LU } from '../numeric/index.ts';
import type { Element } from './elements.ts';
import { Network } from './network.ts';

/**
 * Natural frequencies of a network [rad/s, complex s = sigma + j w], those in the upper half plane and on the real axis.
 *
 * (G + s C) x = 0 by shift and inversion about j w0: with M = (G + s0 C)^-1 C, each eigenvalue mu of M gives s = s0 - 1/mu. Poles
 * near the shift come out best, so w0 is the carrier. An impedance given by frequency is replaced by the series R, L, C
 * that has its value and the slope of its reactance at w0 (negative L or C are allowed: they are only a local fit).
 *
 * @param frequency - carrier [Hz] about which to look
 * @returns poles sorted by distance from the carrier; null if the network is singular there
 */
export function poles(elements: readonly Element[], frequency: number): Complex[] | null {
  const w0 = 2 * Math.PI * frequency;
  const network = new Network(elements.flatMap((e) => (e.kind === 'impedance' ? localFit(e, frequency) : [e])));
  const n = network.size;
  const { g, c } = network.matrices();
  // the shift stands off the axis so that it never hits a lossless pole
  const shift: Complex = { re: 1e-3 * w0, im: w0 };
  const re = Float64Array.from(g, (v, i) => v + shift.re * c[i]!);
  const im = Float64Array.from(c, (v) => shift.im * v);
  const pivots = new Int32Array(n);
  if (!LU.factor(n, re, im, pivots)) return null;
  const mRe = new Float64Array(n * n);
  const mIm = new Float64Array(n * n);
  const xRe = new Float64Array(n);
  const xIm = new Float64Array(n);
  for (let k = 0; k < n; k++) {
    for (let i = 0; i < n; i++) xRe[i] = c[i * n + k]! * w0;
    xIm.fill(0);
    LU.solve(n, re, im, pivots, xRe, xIm);
    for (let i = 0; i < n; i++) {
      mRe[i * n + k] = xRe[i]!;
      mIm[i * n + k] = xIm[i]!;
    }
  }
  const mu = eigenvalues(n, mRe, mIm);
  if (!mu) return null;
  return mu
    .filter((m) => C.abs(m) > 1e-9)
    .map((m) => C.sub(shift, C.scale(C.inv(m), w0)))
    .filter((s) => s.im > -1e-6 * w0)
    .sort((a, b) => C.abs(C.sub(a, { re: 0, im: w0 })) - C.abs(C.sub(b, { re: 0, im: w0 })));
}

/**
 * Series R, L, C with the impedance and the slope of the reactance at the carrier.
 *
 * Foster's reactance theorem makes both L and C positive for a lossless one-port; where losses bend the slope below that, the value of the
 * reactance is kept and the slope is given up.
 */
function localFit(e: Extract<Element, { kind: 'impedance' }>, frequency: number): Element[] {
  const w = 2 * Math.PI * frequency;
  const step = 1e-4;
  const z = e.at(frequency);
  const slope = (e.at(frequency * (1 + step)).im - e.at(frequency * (1 - step)).im) / (2 * step * w);
  let inductance = (slope + z.im / w) / 2;
  let elastance = (w * w * (slope - z.im / w)) / 2;
  if (inductance < 0 || elastance < 0) {
    inductance = Math.max(0, z.im / w);
    elastance = Math.max(0, -w * z.im);
  }
  const inner = `${e.name} inner`;
  const outer = elastance > 0 ? `${e.name} outer` : inner;
  return [
    { kind: 'windings', name: `${e.name} L`, windings: [{ name: `${e.name} L`, a: e.a, b: inner }], inductance: [[inductance]] },
    ...(elastance > 0 ? [{ kind: 'capacitor' as const, name: `${e.name} C`, a: inner, b: outer, capacitance: 1 / elastance }] : []),
    { kind: 'resistor', name: `${e.name} R`, a: outer, b: e.b, resistance: Math.max(0, z.re) },
  ];
}
