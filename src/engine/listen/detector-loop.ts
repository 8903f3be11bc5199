import { C, type Complex } from '../numeric/index.ts';
import type { AudioStepping } from './audio-stepping.ts';
import type { RadioTuning } from './radio-tuning.ts';
import type { RestBias } from './rest-bias.ts';

/** What goes into the detectors for a number of samples. */
export interface LoopInput {
  /** e.m.f. of all stations [V peak, complex] */
  readonly emfRe: Float64Array;
  readonly emfIm: Float64Array;
  /** what the taps make of it at each port */
  readonly feedRe: readonly Float64Array[];
  readonly feedIm: readonly Float64Array[];
}

/** A carrier that has always been on, at the sample before the first. */
export interface Carrier {
  /** from the reference [rad a sample] */
  readonly angle: number;
  /** [V peak, complex] */
  readonly emf: Complex;
}

/** Radio modes, detectors and audio modes, stepped together; states are kept from call to call. */
export interface DetectorLoop {
  /** Takes a tuning, its states carried on; `bias` where the dial will stand, null where it is turning. */
  tune(tuning: RadioTuning, bias: RestBias | null): void;
  /** Starts from rest. */
  rest(bias: RestBias, carriers: readonly Carrier[]): void;
  /** Steps `count` samples from `start` of the input on; the earpiece's voltages [V] are written to `ear` from 0 on. */
  run(input: LoopInput, start: number, count: number, ear: Float64Array): void;
  readonly report: LoopReport;
}

export interface LoopReport {
  /** instants without a solution: zero for any law a passive part can have */
  readonly failures: number;
  /** instants at which Newton's method gave way to the brackets */
  readonly fallbacks: number;
}

/** y of each audio mode for currents that have always flowed. */
export function restAudio(audio: AudioStepping, currents: Float64Array, re: Float64Array, im: Float64Array): void {
  for (let k = 0; k < audio.modes; k++) {
    let a = 0;
    let b = 0;
    for (let p = 0; p < audio.ports; p++) {
      a += audio.intoRe[k * audio.ports + p]! * currents[p]!;
      b += audio.intoIm[k * audio.ports + p]! * currents[p]!;
    }
    // y = u/(1 - decay)
    const r = 1 - audio.decayRe[k]!;
    const m = -audio.decayIm[k]!;
    const size = r * r + m * m;
    re[k] = (a * r + b * m) / size;
    im[k] = (b * r - a * m) / size;
  }
}

/** z of a radio mode under carriers that have always been on, the detectors drawing what they draw at rest. */
export function restMode(carriers: readonly Carrier[], decayRe: number, decayIm: number, sourceRe: number, sourceIm: number): Complex {
  const decay = { re: decayRe, im: decayIm };
  const source = { re: sourceRe, im: sourceIm };
  // z(n + 1) = decay z(n) + source e(n), with e turning by its angle
  return carriers.reduce(
    (sum: Complex, c) => C.add(sum, C.div(C.mul(source, C.mul(c.emf, C.cis(c.angle))), C.sub(C.cis(c.angle), decay))),
    C.ZERO,
  );
}
