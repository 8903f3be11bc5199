import type { DescribingFunction } from '../detector/index.ts';
import type { AudioStepping } from './audio-stepping.ts';
import { type Carrier, type DetectorLoop, type LoopInput, type LoopReport, restAudio, restMode } from './detector-loop.ts';
import { DetectorSolver } from './detector-solver.ts';
import { layout, type RadioTuning } from './radio-tuning.ts';
import { RADIO_IM, RADIO_RE, REST, ResponseMap, RISE } from './response-map.ts';
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
  // taps on the two currents before, and these
  readonly #past = new Float64Array(4);
  #u1Re = 0;
  #u1Im = 0;
  #u2Re = 0;
  #u2Im = 0;
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
    this.#solver.between(numbers[at.zeta]!, numbers[at.zeta + 1]!, tuning.conductances[0]!, this.#audio.within[0]!);
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

  /**
   * All that does not hang on the last current is worked out before it is known (`base`, `quiet`, z without u, y without i), since each sample waits for
   * the one before: d = feed + base + reach u, Vh = quiet + lift i.
   */
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
    const { realModes, modes: audioModes, decayRe: aDecayRe, decayIm: aDecayIm, outRe: aOutRe, outIm: aOutIm } = this.#audio;
    const { earRe, earIm, intoRe, intoIm } = this.#audio;
    const straight = this.#audio.direct[0]!;
    const yRe = this.#yRe;
    const yIm = this.#yIm;
    const solver = this.#solver;
    const map = this.#map;
    const perStep = map === null ? 0 : map.perStep;
    const past1Re = this.#past[0]!;
    const past1Im = this.#past[1]!;
    const past2Re = this.#past[2]!;
    const past2Im = this.#past[3]!;
    let reachRe = -past1Re;
    let reachIm = -past1Im;
    let baseRe = -past1Re * this.#u1Re + past1Im * this.#u1Im - past2Re * this.#u2Re + past2Im * this.#u2Im;
    let baseIm = -past1Re * this.#u1Im - past1Im * this.#u1Re - past2Re * this.#u2Im - past2Im * this.#u2Re;
    for (let k = 0; k < modes; k++) {
      reachRe += outRe[k]!;
      reachIm += outIm[k]!;
      baseRe += outRe[k]! * zRe[k]! - outIm[k]! * zIm[k]!;
      baseIm += outRe[k]! * zIm[k]! + outIm[k]! * zRe[k]!;
    }
    let lift = 0;
    let quiet = 0;
    for (let k = 0; k < audioModes; k++) {
      lift += aOutRe[k]! * intoRe[k]! - aOutIm[k]! * intoIm[k]!;
      quiet += aOutRe[k]! * yRe[k]! - aOutIm[k]! * yIm[k]!;
    }
    let u1Re = this.#u1Re;
    let u1Im = this.#u1Im;
    let u2Re = this.#u2Re;
    let u2Im = this.#u2Im;
    // the first sample's base has the last current in it already
    let uRe = 0;
    let uIm = 0;
    let i = 0;
    let row = -1;
    let column = 0;
    let o = -1;
    for (let n = 0; n < count; n++) {
      const dRe = feedRe[start + n]! + baseRe + reachRe * uRe - reachIm * uIm;
      const dIm = feedIm[start + n]! + baseIm + reachRe * uIm + reachIm * uRe;
      const before = quiet + lift * i;
      const eRe = emfRe[start + n]!;
      const eIm = emfIm[start + n]!;
      baseRe = past2Im * u1Im - past2Re * u1Re;
      baseIm = -past2Re * u1Im - past2Im * u1Re;
      for (let k = 0; k < modes; k++) {
        const a = zRe[k]! + uRe;
        const b = zIm[k]! + uIm;
        const re = decayRe[k]! * a - decayIm[k]! * b + sourceRe[k]! * eRe - sourceIm[k]! * eIm;
        const im = decayRe[k]! * b + decayIm[k]! * a + sourceRe[k]! * eIm + sourceIm[k]! * eRe;
        zRe[k] = re;
        zIm[k] = im;
        baseRe += outRe[k]! * re - outIm[k]! * im;
        baseIm += outRe[k]! * im + outIm[k]! * re;
      }
      let sound = 0;
      quiet = 0;
      for (let k = 0; k < realModes; k++) {
        const y = yRe[k]! + i;
        sound += earRe[k]! * y;
        yRe[k] = aDecayRe[k]! * y;
        quiet += aOutRe[k]! * yRe[k]!;
      }
      for (let k = realModes; k < audioModes; k++) {
        const a = yRe[k]! + intoRe[k]! * i;
        const b = yIm[k]! + intoIm[k]! * i;
        sound += earRe[k]! * a - earIm[k]! * b;
        yRe[k] = aDecayRe[k]! * a - aDecayIm[k]! * b;
        yIm[k] = aDecayRe[k]! * b + aDecayIm[k]! * a;
        quiet += aOutRe[k]! * yRe[k]! - aOutIm[k]! * yIm[k]!;
      }
      u2Re = u1Re;
      u2Im = u1Im;
      // what the detector makes of them
      const drive = Math.sqrt(dRe * dRe + dIm * dIm);
      const s = drive * perStep;
      const t = before * perStep;
      if (map !== null) {
        const atRow = s | 0;
        const atColumn = Math.floor(t);
        if (atRow !== row || atColumn !== column || o < 0) {
          row = atRow;
          column = atColumn;
          o = map.find(row, column);
        }
      }
      if (map !== null && o >= 0) {
        const c = map.cells;
        const x = 2 * (s - row) - 1;
        const y = 2 * (t - column) - 1;
        const a = o + RADIO_RE;
        const wRe =
          c[a]! +
          x * (c[a + 1]! + x * (c[a + 3]! + x * c[a + 6]! + y * c[a + 7]!) + y * c[a + 4]!) +
          y * (c[a + 2]! + y * (c[a + 5]! + y * c[a + 9]! + x * c[a + 8]!));
        const b = o + RADIO_IM;
        const wIm =
          c[b]! +
          x * (c[b + 1]! + x * (c[b + 3]! + x * c[b + 6]! + y * c[b + 7]!) + y * c[b + 4]!) +
          y * (c[b + 2]! + y * (c[b + 5]! + y * c[b + 9]! + x * c[b + 8]!));
        const m = o + RISE;
        const rise =
          c[m]! +
          x * (c[m + 1]! + x * (c[m + 3]! + x * c[m + 6]! + y * c[m + 7]!) + y * c[m + 4]!) +
          y * (c[m + 2]! + y * (c[m + 5]! + y * c[m + 9]! + x * c[m + 8]!));
        const r = o + REST;
        i = before * (c[r]! + y * (c[r + 1]! + y * (c[r + 2]! + y * c[r + 3]!))) + drive * drive * rise;
        uRe = wRe * dRe - wIm * dIm;
        uIm = wRe * dIm + wIm * dRe;
      } else {
        solver.solve(drive, before);
        i = solver.current;
        uRe = solver.radioRe * dRe - solver.radioIm * dIm;
        uIm = solver.radioRe * dIm + solver.radioIm * dRe;
      }
      u1Re = uRe;
      u1Im = uIm;
      ear[n] = sound + straight * i;
    }
    for (let k = 0; k < modes; k++) {
      zRe[k] = zRe[k]! + uRe;
      zIm[k] = zIm[k]! + uIm;
    }
    for (let k = 0; k < audioModes; k++) {
      yRe[k] = yRe[k]! + intoRe[k]! * i;
      yIm[k] = yIm[k]! + intoIm[k]! * i;
    }
    this.#u1Re = u1Re;
    this.#u1Im = u1Im;
    this.#u2Re = u2Re;
    this.#u2Im = u2Im;
  }
}
