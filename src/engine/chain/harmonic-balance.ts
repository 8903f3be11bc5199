import type { DescribingFunction } from '../detector/index.ts';
import { type Complex, solveReal } from '../numeric/index.ts';
import { OperatingPoint } from './operating-point.ts';

/** What drives the detector through one period of a steady tone, at `samples` equal steps of its phase. */
export interface DetectorDrive {
  /** open-circuit RF amplitude at the detector's port [V peak] */
  readonly amplitude: Float64Array;
  /** source impedance there [ohm] */
  readonly zRe: Float64Array;
  readonly zIm: Float64Array;
}

/** The steady state over one audio period. */
export interface Balance {
  /** false where no steady state was found; the fields then hold the last try */
  readonly converged: boolean;
  /** largest error left in the output voltage over the largest voltage */
  readonly residual: number;
  /** output voltage [V] by sample */
  readonly output: Float64Array;
  /** RF amplitude across the law [V peak] by sample */
  readonly amplitude: Float64Array;
  /** fundamental RF current [A peak] by sample */
  readonly fundamental: Float64Array;
  /** output voltage by harmonic of the tone, 0 first [V; peak from 1 up] */
  readonly harmonics: readonly Complex[];
}

/**
 * Steady state of a detector between an RF source that moves with a tone and an audio load, by harmonic balance.
 *
 * The voltage over a period obeys v = z * i(v), a circular convolution with the load's impulse response. Since the mean
 * current of a passive law falls with v, and the load is passive, the problem is monotone and has one solution. Newton's
 * method from the unmodulated point, with its step halved until the error falls; should that stall, the modulation is
 * raised in stages from nothing.
 *
 * @param load - impedance seen by the output at 0, 1, 2 ... samples/2 times the tone [ohm]
 * Holds for: a tone slow against the tank's bandwidth (quasi-static) and radio frequency fully bypassed at the output.
 * Source: K. S. Kundert, A. Sangiovanni-Vincentelli, IEEE Trans. CAD-5 (1986) 521, for the method.
 */
export function harmonicBalance(law: DescribingFunction, drive: DetectorDrive, load: readonly Complex[]): Balance {
  const n = drive.amplitude.length;
  const point = new OperatingPoint(law);
  const kernel = impulseResponse(load, n);
  const mean = meanDrive(drive);
  const start = outputAtRest(point, mean, load[0]!.re);
  const v = new Float64Array(n).fill(start);
  const work = workspace(n);
  let done = newton(point, drive, kernel, v, work);
  if (!done.ok) {
    v.fill(start);
    for (const share of [0.1, 0.2, 0.35, 0.5, 0.65, 0.8, 0.9, 1]) {
      done = newton(point, blend(mean, drive, share), kernel, v, work);
    }
  }
  return {
    converged: done.ok,
    residual: done.residual,
    output: v,
    amplitude: work.amplitude.slice(),
    fundamental: work.fundamental.slice(),
    harmonics: harmonicsOf(v),
  };
}

/**
 * Output voltage at rest [V]: v = R i(v), found inside a bracket that a falling i(v) guarantees. The point is left at rest.
 *
 * @param source - open-circuit amplitude [V peak] and impedance [ohm] at the detector's port
 */
export function outputAtRest(point: OperatingPoint, source: readonly [number, number, number], resistance: number): number {
  const excess = (v: number): number => {
    point.solve(source[0], source[1], source[2], v, source[0]);
    return v - resistance * point.current;
  };
  const e0 = excess(0);
  if (e0 === 0) return 0;
  const sign = e0 < 0 ? 1 : -1;
  let low = 0;
  let high = Math.min(source[0], Math.abs(e0)) || Math.abs(e0);
  for (let widen = 0; widen < 60 && sign * excess(sign * high) < 0; widen++) {
    low = high;
    high *= 2;
  }
  let v = high;
  for (let step = 0; step < 60; step++) {
    const e = sign * excess(sign * v);
    if (e > 0) high = v;
    else low = v;
    const next = v - e / (1 - resistance * point.conductance);
    const before = v;
    v = next > low && next < high ? next : (low + high) / 2;
    // a start for Newton's method, no result
    if (Math.abs(v - before) <= 1e-5 * high) break;
  }
  return sign * v;
}

class Workspace {
  readonly amplitude: Float64Array;
  readonly fundamental: Float64Array;
  readonly current: Float64Array;
  readonly conductance: Float64Array;
  readonly error: Float64Array;
  readonly jacobian: Float64Array;

  constructor(n: number) {
    this.amplitude = new Float64Array(n);
    this.fundamental = new Float64Array(n);
    this.current = new Float64Array(n);
    this.conductance = new Float64Array(n);
    this.error = new Float64Array(n);
    this.jacobian = new Float64Array(n * n);
  }
}

const workspaces = new Map<number, Workspace>();
/** Scratch arrays for n samples: kept, since a search balances thousands of times. */
function workspace(n: number): Workspace {
  const known = workspaces.get(n);
  if (known) {
    known.amplitude.fill(0);
    return known;
  }
  const made = new Workspace(n);
  workspaces.set(n, made);
  return made;
}

/** Largest error of v = z * i(v), the errors themselves left in the workspace. */
function errorOf(point: OperatingPoint, drive: DetectorDrive, kernel: Float64Array, v: Float64Array, w: Workspace): number {
  const n = v.length;
  for (let k = 0; k < n; k++) {
    const guess = w.amplitude[k]! > 0 ? w.amplitude[k]! : k > 0 ? w.amplitude[k - 1]! : drive.amplitude[k]!;
    point.solve(drive.amplitude[k]!, drive.zRe[k]!, drive.zIm[k]!, v[k]!, guess);
    if (!point.settled) return Number.POSITIVE_INFINITY;
    w.amplitude[k] = point.amplitude;
    w.fundamental[k] = point.fundamental;
    w.current[k] = point.current;
    w.conductance[k] = point.conductance;
  }
  let worst = 0;
  for (let k = 0; k < n; k++) {
    let sum = 0;
    for (let m = 0; m < n; m++) sum += kernel[(k - m + n) % n]! * w.current[m]!;
    const e = v[k]! - sum;
    w.error[k] = e;
    worst = Math.max(worst, Math.abs(e));
  }
  return worst;
}

function newton(
  point: OperatingPoint,
  drive: DetectorDrive,
  kernel: Float64Array,
  v: Float64Array,
  w: Workspace,
): { ok: boolean; residual: number } {
  const n = v.length;
  let worst = errorOf(point, drive, kernel, v, w);
  for (let step = 0; step < 60; step++) {
    let size = 0;
    for (let k = 0; k < n; k++) size = Math.max(size, Math.abs(v[k]!));
    if (worst <= 1e-10 * size || worst === 0) return { ok: true, residual: size === 0 ? 0 : worst / size };
    if (worst === Number.POSITIVE_INFINITY) return { ok: false, residual: 1 };
    for (let k = 0; k < n; k++)
      for (let m = 0; m < n; m++) w.jacobian[k * n + m] = (k === m ? 1 : 0) - kernel[(k - m + n) % n]! * w.conductance[m]!;
    if (!solveReal(n, w.jacobian, w.error)) return { ok: false, residual: worst / size };
    const before = worst;
    let share = 1;
    const delta = w.error.slice();
    const from = v.slice();
    for (;;) {
      for (let k = 0; k < n; k++) v[k] = from[k]! - share * delta[k]!;
      worst = errorOf(point, drive, kernel, v, w);
      if (worst < before) break;
      share /= 2;
      // rounding sets the floor: when no step helps any more and the error is already tiny, that is the answer
      if (share < 1e-4) {
        v.set(from);
        errorOf(point, drive, kernel, v, w);
        return { ok: before <= 1e-8 * size, residual: before / size };
      }
    }
  }
  return { ok: false, residual: worst };
}

const circles = new Map<number, { readonly cos: Float64Array; readonly sin: Float64Array }>();
/** Cosine and sine at n equal steps of a turn. */
function circle(n: number): { readonly cos: Float64Array; readonly sin: Float64Array } {
  const known = circles.get(n);
  if (known) return known;
  const at = (f: (x: number) => number): Float64Array => Float64Array.from({ length: n }, (_, k) => f((2 * Math.PI * k) / n));
  const made = { cos: at(Math.cos), sin: at(Math.sin) };
  circles.set(n, made);
  return made;
}

/** Periodic impulse response of the load, so that v[k] = sum over m of kernel[k - m] i[m]. */
function impulseResponse(load: readonly Complex[], n: number): Float64Array {
  const kernel = new Float64Array(n);
  const half = n >> 1;
  const { cos, sin } = circle(n);
  for (let k = 0; k < n; k++) {
    let sum = load[0]!.re;
    for (let h = 1; h < half; h++) {
      const turn = (h * k) % n;
      sum += 2 * (load[h]!.re * cos[turn]! - load[h]!.im * sin[turn]!);
    }
    // the highest harmonic has no sine part on the samples
    sum += load[half]!.re * (k % 2 === 0 ? 1 : -1);
    kernel[k] = sum / n;
  }
  return kernel;
}

function harmonicsOf(v: Float64Array): Complex[] {
  const n = v.length;
  const { cos, sin } = circle(n);
  const out: Complex[] = [];
  for (let h = 0; h <= n >> 1; h++) {
    let re = 0;
    let im = 0;
    for (let k = 0; k < n; k++) {
      const turn = (h * k) % n;
      re += v[k]! * cos[turn]!;
      im -= v[k]! * sin[turn]!;
    }
    const scale = h === 0 || h === n >> 1 ? 1 / n : 2 / n;
    out.push({ re: re * scale, im: im * scale });
  }
  return out;
}

function meanDrive(d: DetectorDrive): [number, number, number] {
  const n = d.amplitude.length;
  let a = 0;
  let r = 0;
  let x = 0;
  for (let k = 0; k < n; k++) {
    a += d.amplitude[k]! / n;
    r += d.zRe[k]! / n;
    x += d.zIm[k]! / n;
  }
  return [a, r, x];
}

function blend(mean: readonly [number, number, number], d: DetectorDrive, share: number): DetectorDrive {
  const mix = (m: number, x: Float64Array): Float64Array => x.map((y) => m + share * (y - m));
  return { amplitude: mix(mean[0], d.amplitude), zRe: mix(mean[1], d.zRe), zIm: mix(mean[2], d.zIm) };
}
