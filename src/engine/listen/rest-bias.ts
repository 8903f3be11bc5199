import { C, type Complex } from '../numeric/index.ts';
import type { CoupledDetectors } from './coupled-detectors.ts';

/** Relative phases of several carriers over which the bias is averaged; they turn by steps of the golden section, which never fall together. */
const PHASES = 96;
const GOLDEN = (Math.sqrt(5) - 1) / 2;
const ROUNDS = 60;

/** The detectors with all carriers on and no modulation. */
export interface RestBias {
  /** mean fundamental current over amplitude [S], each weighted by the power it carries */
  readonly conductances: Float64Array;
  /** mean currents [A] and output voltages [V] */
  readonly currents: Float64Array;
  readonly outputs: Float64Array;
  /** rms over the phases of the amplitude across the law [V peak] */
  readonly amplitudes: Float64Array;
  /** what each output presents to the audio side: fall of its mean current with its voltage, carriers held [S] */
  readonly outputConductances: Float64Array;
}

/**
 * Bias of the detectors at rest.
 *
 * One carrier: the steady point itself. Several: their beats are faster than the audio side, so the output voltages stand at what the mean current, over
 * the phases of the carriers against each other, makes of the resistance to direct current: V = R mean(i(V)), by Newton's steps on each output in turn
 * with the slope taken from the last two tries, inside the bracket that a falling i(V) gives.
 *
 * @param detectors - to work with; its matrices are overwritten
 * @param open - by station and port: open voltage at the port with nothing drawn [V peak]
 * @param impedances - by port and port, at the reference, nothing drawn [ohm]
 * @param steady - R, by port and port [ohm]
 */
export function restBias(
  detectors: CoupledDetectors,
  open: readonly (readonly Complex[])[],
  impedances: readonly (readonly Complex[])[],
  steady: Float64Array,
): RestBias {
  const n = detectors.count;
  for (let j = 0; j < n; j++)
    for (let p = 0; p < n; p++) {
      const k = j * n + p;
      detectors.zRe[k] = impedances[j]![p]!.re;
      detectors.zIm[k] = impedances[j]![p]!.im;
      detectors.r[k] = 0;
    }
  detectors.conductances.fill(0);
  const several = open.length > 1;
  if (!several) detectors.r.set(steady);
  detectors.settle();
  const out: RestBias = {
    conductances: new Float64Array(n),
    currents: new Float64Array(n),
    outputs: new Float64Array(n),
    amplitudes: new Float64Array(n),
    outputConductances: new Float64Array(n),
  };
  if (several) {
    for (let round = 0; round < ROUNDS; round++) {
      let moved = 0;
      let size = 0;
      for (let j = 0; j < n; j++) {
        moved = Math.max(
          moved,
          balance(j, steady, out, () => average(detectors, open, out)),
        );
        size = Math.max(size, Math.abs(out.outputs[j]!));
      }
      if (n === 1 || moved <= 1e-6 * size) break;
    }
  } else {
    average(detectors, open, out);
    for (let j = 0; j < n; j++) out.outputs[j] = detectors.solvers[j]!.output;
    detectors.r.fill(0);
    detectors.settle();
  }
  presentedBy(detectors, open, out);
  return out;
}

/** Averages over the phases with the output voltages as they stand in `out` (or, where the audio side answers within the instant, with that). */
function average(detectors: CoupledDetectors, open: readonly (readonly Complex[])[], out: RestBias): void {
  const n = detectors.count;
  const phases = open.length > 1 ? PHASES : 1;
  const weight = new Float64Array(n);
  out.currents.fill(0);
  out.conductances.fill(0);
  out.amplitudes.fill(0);
  for (let m = 0; m < phases; m++) {
    for (let j = 0; j < n; j++) {
      let d: Complex = C.ZERO;
      open.forEach((station, s) => {
        d = C.add(d, C.mul(station[j]!, C.cis(2 * Math.PI * ((m * GOLDEN * s + (m * s * s) / phases) % 1))));
      });
      detectors.driveRe[j] = d.re;
      detectors.driveIm[j] = d.im;
      detectors.before[j] = out.outputs[j]!;
    }
    detectors.solve();
    for (let j = 0; j < n; j++) {
      const { current, conductance, amplitude } = detectors.solvers[j]!;
      out.currents[j] = out.currents[j]! + current / phases;
      out.amplitudes[j] = out.amplitudes[j]! + (amplitude * amplitude) / phases;
      const power = amplitude * amplitude + Number.MIN_VALUE;
      out.conductances[j] = out.conductances[j]! + conductance * power;
      weight[j] = weight[j]! + power;
    }
  }
  for (let j = 0; j < n; j++) {
    // a law that hands power back has a conductance below zero: it stays in the law
    out.conductances[j] = Math.max(0, out.conductances[j]! / weight[j]!);
    out.amplitudes[j] = Math.sqrt(out.amplitudes[j]!);
  }
}

/** Fall of each mean current with its output voltage, from a small step either way. */
function presentedBy(detectors: CoupledDetectors, open: readonly (readonly Complex[])[], out: RestBias): void {
  for (let j = 0; j < detectors.count; j++) {
    const v = out.outputs[j]!;
    const step = 1e-3 * (Math.abs(v) + out.amplitudes[j]!) + 1e-6;
    out.outputs[j] = v + step;
    average(detectors, open, out);
    const above = out.currents[j]!;
    out.outputs[j] = v - step;
    average(detectors, open, out);
    out.outputConductances[j] = (out.currents[j]! - above) / (2 * step);
    out.outputs[j] = v;
  }
  average(detectors, open, out);
}

/** Output j alone brought to V = R i(V), others held. @returns how far it moved */
function balance(j: number, steady: Float64Array, out: RestBias, averaged: () => void): number {
  const n = out.outputs.length;
  const start = out.outputs[j]!;
  const excess = (v: number): number => {
    out.outputs[j] = v;
    averaged();
    let target = 0;
    for (let p = 0; p < n; p++) target += steady[j * n + p]! * out.currents[p]!;
    return v - target;
  };
  let near = start;
  let atNear = excess(near);
  if (atNear === 0) return 0;
  // the slope is one at least, so the root lies within the excess
  let far = near - atNear;
  let atFar = excess(far);
  for (let step = 0; step < ROUNDS && Math.abs(far - near) > 1e-7 * Math.abs(far); step++) {
    // Illinois: regula falsi that lets go of an end that stays
    let next = far - (atFar * (far - near)) / (atFar - atNear);
    if (!(next > Math.min(near, far) && next < Math.max(near, far))) next = (near + far) / 2;
    const at = excess(next);
    if (at === 0) break;
    if (at * atFar < 0) {
      near = far;
      atNear = atFar;
    } else atNear /= 2;
    far = next;
    atFar = at;
  }
  return Math.abs(out.outputs[j]! - start);
}
