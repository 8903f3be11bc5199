import { ETA0 } from '../constants.ts';
import { C, type Complex, gaussLegendre } from '../numeric/index.ts';

/**
 * Current along a piece of upright wire, over the current at the feed: I(z) = forward e^(jkz) + backward e^(-jkz) for from <= z <= to.
 *
 * Sums of such pieces stand for every straight aerial whose current is taken as on a lossless line: rods, drop wires, a wire to
 * an earth rod, a wire with a flat top.
 */
export interface CurrentPiece {
  /** heights of its ends [m] */
  readonly from: number;
  readonly to: number;
  readonly radius: number;
  readonly forward: Complex;
  readonly backward: Complex;
}

/** I(z) = scale sin k(zero - z): the current that vanishes, or would vanish, at the height `zero`. */
export function sineCurrent(k: number, from: number, to: number, radius: number, zero: number, scale: number): CurrentPiece {
  // sin k(zero - z) = (e^(jk zero) e^(-jkz) - e^(-jk zero) e^(jkz)) / 2j
  const re = (scale / 2) * Math.sin(k * zero);
  const im = (scale / 2) * Math.cos(k * zero);
  return { from, to, radius, forward: { re, im }, backward: { re, im: -im } };
}

/** sin x / x */
export const sinc = (x: number): number => (Math.abs(x) < 1e-8 ? 1 : Math.sin(x) / x);

/**
 * Integral of I(z) e^(jkz c) dz [m], c the sine of the elevation.
 *
 * Times cos e it is the effective length for the vertical field, phase referred to z = 0.
 */
export function momentOf(pieces: readonly CurrentPiece[], k: number, c: number): Complex {
  let re = 0;
  let im = 0;
  for (const { from, to, forward, backward } of pieces) {
    const length = to - from;
    const middle = (to + from) / 2;
    const up = k * (c + 1);
    const down = k * (c - 1);
    const p = length * sinc((up * length) / 2);
    const q = length * sinc((down * length) / 2);
    const upCos = p * Math.cos(up * middle);
    const upSin = p * Math.sin(up * middle);
    const downCos = q * Math.cos(down * middle);
    const downSin = q * Math.sin(down * middle);
    re += forward.re * upCos - forward.im * upSin + backward.re * downCos - backward.im * downSin;
    im += forward.re * upSin + forward.im * upCos + backward.re * downSin + backward.im * downCos;
  }
  return { re, im };
}

/** Integral of |I(z)|^2 dz over a piece [m]: times ohms for each metre it is the resistance of the metal, at the feed. */
export function squareLength({ from, to, forward, backward }: CurrentPiece, k: number): number {
  const length = to - from;
  const cross = C.mul(C.mul(forward, C.conj(backward)), C.cis(k * (to + from)));
  return length * (C.abs2(forward) + C.abs2(backward) + 2 * cross.re * sinc(k * length));
}

/**
 * Radiation resistance of the current, by the power through a large sphere.
 *
 * R = eta k^2 / (8 pi) * integral from -1 to 1 of |moment(c)|^2 (1 - c^2) dc; over a conducting plane at z = 0 the image is added and
 * the integral runs from 0 to 1.
 *
 * @returns [ohm] at the feed
 * Holds as far as the assumed current does; the ground, where there is one, is taken as perfect for the resistance.
 * Source: Balanis, Antenna Theory, 3rd ed., sec. 4.5 (radiated power of a given current), 4.7 (image).
 */
export function radiationResistance(pieces: readonly CurrentPiece[], k: number, over: 'space' | 'plane'): number {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const p of pieces) {
    low = Math.min(low, p.from);
    high = Math.max(high, p.to);
  }
  const span = over === 'plane' ? high : high - low;
  // |moment|^2 turns through k span either way; ten points more than half a turn's worth leave 1e-9
  const n = Math.min(96, 8 + Math.ceil((k * span) / 2));
  const { nodes, weights } = gaussLegendre(n);
  let sum = 0;
  for (let i = 0; i < n; i++) {
    if (over === 'space') {
      const c = nodes[i]!;
      sum += weights[i]! * (1 - c * c) * C.abs2(momentOf(pieces, k, c));
      continue;
    }
    const c = (1 + nodes[i]!) / 2;
    sum += (weights[i]! / 2) * (1 - c * c) * C.abs2(C.add(momentOf(pieces, k, c), momentOf(pieces, k, -c)));
  }
  return ((ETA0 * k * k) / (8 * Math.PI)) * sum;
}

/**
 * Radiation resistance in free space of any aerial much smaller than the wavelength, from its effective length.
 *
 * R = eta k^2 h^2 / (6 pi) = 80 pi^2 (h/lambda)^2; short dipole h = l/2, small loop h = k N A.
 *
 * @param effectiveLength - the greatest over all directions [m]
 * @param waveImpedance - [ohm]; the older books round it to 120 pi
 * @returns [ohm] at the feed; over a conducting plane twice that
 * Holds for sizes below a tenth of the wavelength, where the pattern is the doughnut of directivity 1.5.
 * Source: Balanis, Antenna Theory, 3rd ed., eqs 4-37, 5-24.
 */
export function smallAerialResistance(effectiveLength: number, wavelength: number, waveImpedance = ETA0): number {
  return ((2 * Math.PI) / 3) * waveImpedance * (effectiveLength / wavelength) ** 2;
}
