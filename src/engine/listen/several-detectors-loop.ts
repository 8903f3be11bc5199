import type { DescribingFunction } from '../detector/index.ts';
import type { AudioStepping } from './audio-stepping.ts';
import { CoupledDetectors } from './coupled-detectors.ts';
import { type Carrier, type DetectorLoop, type LoopInput, type LoopReport, restAudio, restMode } from './detector-loop.ts';
import { layout, type RadioTuning } from './radio-tuning.ts';
import type { RestBias } from './rest-bias.ts';

/** The loop for any number of detectors: every instant is solved directly. */
export class SeveralDetectorsLoop implements DetectorLoop {
  readonly #audio: AudioStepping;
  readonly #detectors: CoupledDetectors;
  #numbers: Float64Array = new Float64Array(0);
  #modes = 0;
  #taps = 0;
  #zRe = new Float64Array(0);
  #zIm = new Float64Array(0);
  readonly #uRe: Float64Array;
  readonly #uIm: Float64Array;
  readonly #yRe: Float64Array;
  readonly #yIm: Float64Array;

  constructor(laws: readonly DescribingFunction[], audio: AudioStepping) {
    this.#audio = audio;
    this.#detectors = new CoupledDetectors(laws);
    this.#detectors.r.set(audio.within);
    this.#uRe = new Float64Array(laws.length);
    this.#uIm = new Float64Array(laws.length);
    this.#yRe = new Float64Array(audio.modes);
    this.#yIm = new Float64Array(audio.modes);
  }

  get report(): LoopReport {
    const { solvers, failures } = this.#detectors;
    return {
      failures: solvers.reduce((sum, s) => sum + s.failures, failures),
      fallbacks: solvers.reduce((sum, s) => sum + s.fallbacks, 0),
    };
  }

  tune(tuning: RadioTuning): void {
    const d = this.#detectors;
    const n = d.count;
    const { modes, numbers, conductances } = tuning;
    const at = layout(modes, n, tuning.taps);
    if (modes !== this.#modes) {
      const grow = (a: Float64Array) => Float64Array.from({ length: modes }, (_, k) => a[k] ?? 0);
      this.#zRe = grow(this.#zRe);
      this.#zIm = grow(this.#zIm);
      this.#modes = modes;
    }
    this.#taps = tuning.taps;
    this.#numbers = numbers;
    for (let j = 0; j < n; j++)
      for (let p = 0; p < n; p++) {
        const k = j * n + p;
        d.zRe[k] = numbers[at.zeta + 2 * k]!;
        d.zIm[k] = numbers[at.zeta + 2 * k + 1]!;
      }
    d.conductances.set(conductances);
    d.settle();
  }

  rest(bias: RestBias, carriers: readonly Carrier[]): void {
    restAudio(this.#audio, bias.currents, this.#yRe, this.#yIm);
    this.#detectors.solvers.forEach((s, j) => {
      s.output = bias.outputs[j]!;
      s.amplitude = bias.amplitudes[j]!;
      s.current = bias.currents[j]!;
      s.conductance = bias.conductances[j]!;
    });
    const c = this.#numbers;
    const at = layout(this.#modes, this.#detectors.count, this.#taps);
    for (let k = 0; k < this.#modes; k++) {
      const o = k * at.stride;
      const z = restMode(carriers, c[o + at.decay]!, c[o + at.decay + 1]!, c[o + at.source]!, c[o + at.source + 1]!);
      this.#zRe[k] = z.re;
      this.#zIm[k] = z.im;
    }
  }

  run(input: LoopInput, start: number, count: number, ear: Float64Array): void {
    const d = this.#detectors;
    const n = d.count;
    const modes = this.#modes;
    const numbers = this.#numbers;
    const at = layout(modes, n, this.#taps);
    const zRe = this.#zRe;
    const zIm = this.#zIm;
    const a = this.#audio;
    const yRe = this.#yRe;
    const yIm = this.#yIm;
    for (let s = 0; s < count; s++) {
      for (let j = 0; j < n; j++) {
        let re = input.feedRe[j]![start + s]!;
        let im = input.feedIm[j]![start + s]!;
        for (let k = 0; k < modes; k++) {
          const o = k * at.stride + at.outOf + 2 * j;
          re += numbers[o]! * zRe[k]! - numbers[o + 1]! * zIm[k]!;
          im += numbers[o]! * zIm[k]! + numbers[o + 1]! * zRe[k]!;
        }
        d.driveRe[j] = re;
        d.driveIm[j] = im;
        let before = 0;
        for (let k = 0; k < a.modes; k++) before += a.outRe[k * n + j]! * yRe[k]! - a.outIm[k * n + j]! * yIm[k]!;
        d.before[j] = before;
      }
      d.solve();
      let sound = 0;
      for (let k = 0; k < a.modes; k++) sound += a.earRe[k]! * yRe[k]! - a.earIm[k]! * yIm[k]!;
      for (let p = 0; p < n; p++) {
        const beyond = d.solvers[p]!.conductance - d.conductances[p]!;
        this.#uRe[p] = beyond * d.voltageRe[p]!;
        this.#uIm[p] = beyond * d.voltageIm[p]!;
        sound += a.direct[p]! * d.solvers[p]!.current;
      }
      ear[s] = sound;
      this.#step(input.emfRe[start + s]!, input.emfIm[start + s]!, at);
    }
  }

  #step(eRe: number, eIm: number, at: ReturnType<typeof layout>): void {
    const n = this.#detectors.count;
    const { solvers } = this.#detectors;
    const c = this.#numbers;
    for (let k = 0; k < this.#modes; k++) {
      const o = k * at.stride;
      const s = o + at.source;
      let re = c[o]! * this.#zRe[k]! - c[o + 1]! * this.#zIm[k]! + c[s]! * eRe - c[s + 1]! * eIm;
      let im = c[o]! * this.#zIm[k]! + c[o + 1]! * this.#zRe[k]! + c[s]! * eIm + c[s + 1]! * eRe;
      for (let p = 0; p < n; p++) {
        const q = o + at.into + 2 * p;
        re += c[q]! * this.#uRe[p]! - c[q + 1]! * this.#uIm[p]!;
        im += c[q]! * this.#uIm[p]! + c[q + 1]! * this.#uRe[p]!;
      }
      this.#zRe[k] = re;
      this.#zIm[k] = im;
    }
    const a = this.#audio;
    for (let k = 0; k < a.modes; k++) {
      let re = a.decayRe[k]! * this.#yRe[k]! - a.decayIm[k]! * this.#yIm[k]!;
      let im = a.decayRe[k]! * this.#yIm[k]! + a.decayIm[k]! * this.#yRe[k]!;
      for (let p = 0; p < n; p++) {
        re += a.intoRe[k * n + p]! * solvers[p]!.current;
        im += a.intoIm[k * n + p]! * solvers[p]!.current;
      }
      this.#yRe[k] = re;
      this.#yIm[k] = im;
    }
  }
}
