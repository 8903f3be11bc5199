import type { DescribingFunction } from '../detector/index.ts';
import type { AudioStepping } from './audio-stepping.ts';
import { type Carrier, type DetectorLoop, type LoopInput, type LoopReport, restAudio, restMode } from './detector-loop.ts';
import { DetectorSolver } from './detector-solver.ts';
import { layout, type RadioTuning } from './radio-tuning.ts';
import { CONDUCTANCE, REST, ResponseMap, RISE } from './response-map.ts';
import type { RestBias } from './rest-bias.ts';

/** The loop for a single detector: its answer is looked up in a map while the dial stands. */
export class OneDetectorLoop implements DetectorLoop {
  readonly #audio: AudioStepping;
  readonly #solver: DetectorSolver;
  #map: ResponseMap | null = null;
  #modes = 0;
  // radio: decay, source, out by mode, and z
  #decayRe = new Float64Array(0);
  #decayIm = new Float64Array(0);
  #sourceRe = new Float64Array(0);
  #sourceIm = new Float64Array(0);
  #outRe = new Float64Array(0);
  #outIm = new Float64Array(0);
  #zRe = new Float64Array(0);
  #zIm = new Float64Array(0);
  #fRe = 1;
  #fIm = 0;
  #zetaRe = 0;
  #zetaIm = 0;
  #conductance = 0;
  // taps on the two currents before, and these
  readonly #past = new Float64Array(4);
  readonly #currents = new Float64Array(4);
  readonly #yRe: Float64Array;
  readonly #yIm: Float64Array;

  constructor(law: DescribingFunction, audio: AudioStepping) {
    this.#audio = audio;
    this.#solver = new DetectorSolver(law);
    this.#yRe = new Float64Array(audio.modes);
    this.#yIm = new Float64Array(audio.modes);
  }

  get report(): LoopReport {
    return { failures: this.#solver.failures, fallbacks: this.#solver.fallbacks };
  }

  tune(tuning: RadioTuning, bias: RestBias | null): void {
    const { modes, numbers } = tuning;
    const at = layout(modes, 1, tuning.taps);
    if (modes !== this.#modes) {
      // modes beyond those that were there start from rest; the radio side settles within microseconds
      const grow = (a: Float64Array) => Float64Array.from({ length: modes }, (_, k) => a[k] ?? 0);
      this.#zRe = grow(this.#zRe);
      this.#zIm = grow(this.#zIm);
      this.#decayRe = new Float64Array(modes);
      this.#decayIm = new Float64Array(modes);
      this.#sourceRe = new Float64Array(modes);
      this.#sourceIm = new Float64Array(modes);
      this.#outRe = new Float64Array(modes);
      this.#outIm = new Float64Array(modes);
      this.#modes = modes;
    }
    for (let k = 0; k < modes; k++) {
      const o = k * at.stride;
      this.#decayRe[k] = numbers[o + at.decay]!;
      this.#decayIm[k] = numbers[o + at.decay + 1]!;
      this.#sourceRe[k] = numbers[o + at.source]!;
      this.#sourceIm[k] = numbers[o + at.source + 1]!;
      this.#outRe[k] = numbers[o + at.outOf]!;
      this.#outIm[k] = numbers[o + at.outOf + 1]!;
    }
    this.#past.set(numbers.subarray(at.past, at.past + 4));
    this.#zetaRe = numbers[at.zeta]!;
    this.#zetaIm = numbers[at.zeta + 1]!;
    this.#conductance = tuning.conductances[0]!;
    this.#fRe = 1 - this.#zetaRe * this.#conductance;
    this.#fIm = -this.#zetaIm * this.#conductance;
    this.#solver.between(this.#fRe, this.#fIm, this.#zetaRe, this.#zetaIm, this.#audio.within[0]!);
    const within = this.#audio.within[0]!;
    this.#map = bias === null ? null : new ResponseMap(this.#solver, bias.amplitudes[0]!, bias.outputs[0]! - within * bias.currents[0]!);
  }

  rest(bias: RestBias, carriers: readonly Carrier[]): void {
    restAudio(this.#audio, bias.currents, this.#yRe, this.#yIm);
    this.#solver.output = bias.outputs[0]!;
    this.#solver.amplitude = bias.amplitudes[0]!;
    for (let k = 0; k < this.#modes; k++) {
      const z = restMode(carriers, this.#decayRe[k]!, this.#decayIm[k]!, this.#sourceRe[k]!, this.#sourceIm[k]!);
      this.#zRe[k] = z.re;
      this.#zIm[k] = z.im;
    }
  }

  run(input: LoopInput, start: number, count: number, ear: Float64Array): void {
    const { emfRe, emfIm } = input;
    const feedRe = input.feedRe[0]!;
    const feedIm = input.feedIm[0]!;
    const modes = this.#modes;
    const decayRe = this.#decayRe;
    const decayIm = this.#decayIm;
    const sourceRe = this.#sourceRe;
    const sourceIm = this.#sourceIm;
    const outRe = this.#outRe;
    const outIm = this.#outIm;
    const zRe = this.#zRe;
    const zIm = this.#zIm;
    const fRe = this.#fRe;
    const fIm = this.#fIm;
    const zetaRe = this.#zetaRe;
    const zetaIm = this.#zetaIm;
    const conductance = this.#conductance;
    const audio = this.#audio;
    const { realModes, direct, decayRe: aDecayRe, decayIm: aDecayIm, outRe: aOutRe, outIm: aOutIm, earRe, earIm } = audio;
    const { intoRe, intoIm } = audio;
    const audioModes = audio.modes;
    const straight = direct[0]!;
    const yRe = this.#yRe;
    const yIm = this.#yIm;
    const solver = this.#solver;
    const map = this.#map;
    const perStep = map === null ? 0 : map.perStep;
    const [past1Re, past1Im, past2Re, past2Im] = [this.#past[0]!, this.#past[1]!, this.#past[2]!, this.#past[3]!];
    let [u1Re, u1Im, u2Re, u2Im] = [this.#currents[0]!, this.#currents[1]!, this.#currents[2]!, this.#currents[3]!];
    let row = -1;
    let column = 0;
    let o = -1;
    for (let n = 0; n < count; n++) {
      // what the radio side and the audio side have been
      let dRe = feedRe[start + n]! - past1Re * u1Re + past1Im * u1Im - past2Re * u2Re + past2Im * u2Im;
      let dIm = feedIm[start + n]! - past1Re * u1Im - past1Im * u1Re - past2Re * u2Im - past2Im * u2Re;
      for (let k = 0; k < modes; k++) {
        dRe += outRe[k]! * zRe[k]! - outIm[k]! * zIm[k]!;
        dIm += outRe[k]! * zIm[k]! + outIm[k]! * zRe[k]!;
      }
      let before = 0;
      let sound = 0;
      for (let k = 0; k < realModes; k++) {
        before += aOutRe[k]! * yRe[k]!;
        sound += earRe[k]! * yRe[k]!;
      }
      for (let k = realModes; k < audioModes; k++) {
        before += aOutRe[k]! * yRe[k]! - aOutIm[k]! * yIm[k]!;
        sound += earRe[k]! * yRe[k]! - earIm[k]! * yIm[k]!;
      }
      // what the detector makes of them
      let g: number;
      let i: number;
      const drive = Math.sqrt(dRe * dRe + dIm * dIm);
      if (map !== null) {
        const s = drive * perStep;
        const t = before * perStep;
        const atRow = s | 0;
        const atColumn = Math.floor(t);
        if (atRow !== row || atColumn !== column || o < 0) {
          row = atRow;
          column = atColumn;
          o = map.find(row, column);
        }
        if (o >= 0) {
          const c = map.cells;
          const x = 2 * (s - row) - 1;
          const y = 2 * (t - column) - 1;
          const a = o + CONDUCTANCE;
          g =
            c[a]! +
            x * (c[a + 1]! + x * (c[a + 3]! + x * c[a + 6]! + y * c[a + 7]!) + y * c[a + 4]!) +
            y * (c[a + 2]! + y * (c[a + 5]! + y * c[a + 9]! + x * c[a + 8]!));
          const b = o + RISE;
          const rise =
            c[b]! +
            x * (c[b + 1]! + x * (c[b + 3]! + x * c[b + 6]! + y * c[b + 7]!) + y * c[b + 4]!) +
            y * (c[b + 2]! + y * (c[b + 5]! + y * c[b + 9]! + x * c[b + 8]!));
          const r = o + REST;
          i = before * (c[r]! + y * (c[r + 1]! + y * (c[r + 2]! + y * c[r + 3]!))) + drive * drive * rise;
        } else {
          solver.solve(drive, before);
          g = solver.conductance;
          i = solver.current;
        }
      } else {
        solver.solve(drive, before);
        g = solver.conductance;
        i = solver.current;
      }
      ear[n] = sound + straight * i;
      // and what becomes of both sides
      const a = fRe + zetaRe * g;
      const b = fIm + zetaIm * g;
      const beyond = (g - conductance) / (a * a + b * b);
      const uRe = beyond * (dRe * a + dIm * b);
      const uIm = beyond * (dIm * a - dRe * b);
      u2Re = u1Re;
      u2Im = u1Im;
      u1Re = uRe;
      u1Im = uIm;
      const eRe = emfRe[start + n]!;
      const eIm = emfIm[start + n]!;
      for (let k = 0; k < modes; k++) {
        const re = decayRe[k]! * zRe[k]! - decayIm[k]! * zIm[k]! + uRe + sourceRe[k]! * eRe - sourceIm[k]! * eIm;
        zIm[k] = decayRe[k]! * zIm[k]! + decayIm[k]! * zRe[k]! + uIm + sourceRe[k]! * eIm + sourceIm[k]! * eRe;
        zRe[k] = re;
      }
      for (let k = 0; k < realModes; k++) yRe[k] = aDecayRe[k]! * yRe[k]! + i;
      for (let k = realModes; k < audioModes; k++) {
        const re = aDecayRe[k]! * yRe[k]! - aDecayIm[k]! * yIm[k]! + intoRe[k]! * i;
        yIm[k] = aDecayRe[k]! * yIm[k]! + aDecayIm[k]! * yRe[k]! + intoIm[k]! * i;
        yRe[k] = re;
      }
    }
    this.#currents[0] = u1Re;
    this.#currents[1] = u1Im;
    this.#currents[2] = u2Re;
    this.#currents[3] = u2Im;
  }
}
