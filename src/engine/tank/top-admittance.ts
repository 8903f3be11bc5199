import { C, type Complex, LU } from '../numeric/index.ts';

/** The coil with its taps and links as branches between numbered nodes; earth is -1, the top is 0. */
export interface CoilNetwork {
  readonly hot: readonly number[];
  readonly cold: readonly number[];
  /** series resistance of each branch [ohm] */
  readonly resistance: readonly number[];
  /** [H] */
  readonly inductance: readonly (readonly number[])[];
  /** what hangs from each node to earth [S]; that of the top is added by the caller */
  readonly load: readonly Complex[];
}

/**
 * Admittance of the coil seen at its top, with something hanging on its taps and links.
 *
 * v_hot - v_cold = sum_l (R_k d_kl + j w L_kl) i_l; currents into each node but the top add up to zero; the top stands at 1 V.
 *
 * @param w - [rad/s]
 * @returns [S]; null where the network has no single solution
 */
export function coilAdmittance(network: CoilNetwork, w: number): Complex | null {
  const { hot, cold, resistance, inductance, load } = network;
  const b = hot.length;
  if (b === 1) return C.inv({ re: resistance[0]!, im: w * inductance[0]![0]! });
  const n = b + load.length - 1;
  const re = new Float64Array(n * n);
  const im = new Float64Array(n * n);
  const xRe = new Float64Array(n);
  const xIm = new Float64Array(n);
  const join = (branch: number, node: number, sign: number): void => {
    if (node === 0) xRe[branch] = xRe[branch]! - sign;
    if (node <= 0) return;
    const at = b + node - 1;
    re[branch * n + at] = sign;
    re[at * n + branch] = sign;
  };
  for (let k = 0; k < b; k++) {
    for (let l = 0; l < b; l++) im[k * n + l] = -w * inductance[k]![l]!;
    re[k * n + k] = -resistance[k]!;
    join(k, hot[k]!, 1);
    join(k, cold[k]!, -1);
  }
  for (let node = 1; node < load.length; node++) {
    const at = (b + node - 1) * (n + 1);
    re[at] = load[node]!.re;
    im[at] = load[node]!.im;
  }
  const pivots = new Int32Array(n);
  if (!LU.factor(n, re, im, pivots)) return null;
  LU.solve(n, re, im, pivots, xRe, xIm);
  let sum: Complex = C.ZERO;
  for (let k = 0; k < b; k++) if (hot[k] === 0) sum = C.add(sum, { re: xRe[k]!, im: xIm[k]! });
  return sum;
}
