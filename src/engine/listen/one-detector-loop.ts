import type { DescribingFunction } from '../detector/index.ts';
import type { AudioStepping } from './audio-stepping.ts';
import { type Carrier, type DetectorLoop, type LoopInput, type LoopReport, restAudio, restMode } from './detector-loop.ts';
import { DetectorSolver } from './detector-solver.ts';
import { layout, type RadioTuning } from './radio-tuning.ts';
import { ResponseMap, type Strip } from './response-map.ts';
import type { RestBias } from './rest-bias.ts';

const NONE = new Int32Array(0);
const NOTHING = new Float64Array(0);

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
    // at rest the law draws no more than its resting conductance
    this.#u1Re = 0;
    this.#u1Im = 0;
    this.#u2Re = 0;
    this.#u2Im = 0;
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
    const {
      realModes,
      modes: audioModes,
      decayRe: audioDecayRe,
      decayIm: audioDecayIm,
      outRe: audioOutRe,
      outIm: audioOutIm,
    } = this.#audio;
    const { earRe, earIm, intoRe, intoIm } = this.#audio;
    const straight = this.#audio.direct[0]!;
    const yRe = this.#yRe;
    const yIm = this.#yIm;
    const solver = this.#solver;
    const map = this.#map;
    const perStep = map === null ? 0 : map.perStep;
    const perHalfStep = 2 * perStep;
    const perSquare = map === null ? 0 : map.perSquare;
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
      lift += audioOutRe[k]! * intoRe[k]! - audioOutIm[k]! * intoIm[k]!;
      quiet += audioOutRe[k]! * yRe[k]! - audioOutIm[k]! * yIm[k]!;
    }
    let u1Re = this.#u1Re;
    let u1Im = this.#u1Im;
    let u2Re = this.#u2Re;
    let u2Im = this.#u2Im;
    // the first sample's base has the last current in it already
    let uRe = 0;
    let uIm = 0;
    let i = 0;
    // the first two modes of either side are kept out of the arrays while it runs: most circuits have no more
    const aRe = decayRe[0] ?? 0;
    const aIm = decayIm[0] ?? 0;
    const aSourceRe = sourceRe[0] ?? 0;
    const aSourceIm = sourceIm[0] ?? 0;
    const aOutRe = outRe[0] ?? 0;
    const aOutIm = outIm[0] ?? 0;
    let aZRe = zRe[0] ?? 0;
    let aZIm = zIm[0] ?? 0;
    const bRe = decayRe[1] ?? 0;
    const bIm = decayIm[1] ?? 0;
    const bSourceRe = sourceRe[1] ?? 0;
    const bSourceIm = sourceIm[1] ?? 0;
    const bOutRe = outRe[1] ?? 0;
    const bOutIm = outIm[1] ?? 0;
    let bZRe = zRe[1] ?? 0;
    let bZIm = zIm[1] ?? 0;
    const firstReal = realModes > 0 ? 1 : 0;
    const pDecay = firstReal * (audioDecayRe[0] ?? 0);
    const pOut = firstReal * (audioOutRe[0] ?? 0);
    const pEar = firstReal * (earRe[0] ?? 0);
    let pY = firstReal * (yRe[0] ?? 0);
    const secondReal = realModes > 1 ? 1 : 0;
    const qDecay = secondReal * (audioDecayRe[1] ?? 0);
    const qOut = secondReal * (audioOutRe[1] ?? 0);
    const qEar = secondReal * (earRe[1] ?? 0);
    let qY = secondReal * (yRe[1] ?? 0);
    const nextReal = firstReal + secondReal;
    let row = Number.NaN;
    let column = Number.NaN;
    let o = -1;
    let middleY = 0;
    let strip: Strip | null = null;
    let rows: Int32Array = NONE;
    let cells: Float64Array = map === null ? NOTHING : map.cells;
    let rest0 = 0;
    let rest1 = 0;
    let rest2 = 0;
    let rest3 = 0;
    for (let n = 0; n < count; n++) {
      const dRe = feedRe[start + n]! + baseRe + reachRe * uRe - reachIm * uIm;
      const dIm = feedIm[start + n]! + baseIm + reachRe * uIm + reachIm * uRe;
      const before = quiet + lift * i;
      const eRe = emfRe[start + n]!;
      const eIm = emfIm[start + n]!;
      const aFullRe = aZRe + uRe;
      const aFullIm = aZIm + uIm;
      aZRe = aRe * aFullRe - aIm * aFullIm + aSourceRe * eRe - aSourceIm * eIm;
      aZIm = aRe * aFullIm + aIm * aFullRe + aSourceRe * eIm + aSourceIm * eRe;
      const bFullRe = bZRe + uRe;
      const bFullIm = bZIm + uIm;
      bZRe = bRe * bFullRe - bIm * bFullIm + bSourceRe * eRe - bSourceIm * eIm;
      bZIm = bRe * bFullIm + bIm * bFullRe + bSourceRe * eIm + bSourceIm * eRe;
      baseRe = past2Im * u1Im - past2Re * u1Re + (aOutRe * aZRe - aOutIm * aZIm) + (bOutRe * bZRe - bOutIm * bZIm);
      baseIm = -past2Re * u1Im - past2Im * u1Re + (aOutRe * aZIm + aOutIm * aZRe) + (bOutRe * bZIm + bOutIm * bZRe);
      for (let k = 2; k < modes; k++) {
        const a = zRe[k]! + uRe;
        const b = zIm[k]! + uIm;
        const re = decayRe[k]! * a - decayIm[k]! * b + sourceRe[k]! * eRe - sourceIm[k]! * eIm;
        const im = decayRe[k]! * b + decayIm[k]! * a + sourceRe[k]! * eIm + sourceIm[k]! * eRe;
        zRe[k] = re;
        zIm[k] = im;
        baseRe += outRe[k]! * re - outIm[k]! * im;
        baseIm += outRe[k]! * im + outIm[k]! * re;
      }
      pY += i;
      qY += i;
      let sound = pEar * pY + qEar * qY;
      pY *= pDecay;
      qY *= qDecay;
      quiet = pOut * pY + qOut * qY;
      for (let k = nextReal; k < realModes; k++) {
        const y = yRe[k]! + i;
        sound += earRe[k]! * y;
        yRe[k] = audioDecayRe[k]! * y;
        quiet += audioOutRe[k]! * yRe[k]!;
      }
      for (let k = realModes; k < audioModes; k++) {
        const a = yRe[k]! + intoRe[k]! * i;
        const b = yIm[k]! + intoIm[k]! * i;
        sound += earRe[k]! * a - earIm[k]! * b;
        yRe[k] = audioDecayRe[k]! * a - audioDecayIm[k]! * b;
        yIm[k] = audioDecayRe[k]! * b + audioDecayIm[k]! * a;
        quiet += audioOutRe[k]! * yRe[k]! - audioOutIm[k]! * yIm[k]!;
      }
      u2Re = u1Re;
      u2Im = u1Im;
      // what the detector makes of them
      const square = dRe * dRe + dIm * dIm;
      if (map !== null) {
        // where neither has changed the cell is known ahead of the drive
        const atRow = Math.floor(square * perSquare);
        const atColumn = Math.floor(before * perStep);
        if (atRow !== row || atColumn !== column || o < 0) {
          row = atRow;
          if (atColumn !== column) {
            column = atColumn;
            middleY = 2 * column + 1;
            strip = map.strip(column);
            rows = strip.rows;
            rest0 = strip.rest[0]!;
            rest1 = strip.rest[1]!;
            rest2 = strip.rest[2]!;
            rest3 = strip.rest[3]!;
          }
          o = row < rows.length ? rows[row]! : -1;
          if (o < 0) {
            o = map.find(strip!, row);
            rows = strip!.rows;
            cells = map.cells;
          }
        }
      }
      if (o >= 0) {
        // polynomials in x whose coefficients are polynomials in y, which is known earlier
        const c = cells;
        const y = before * perHalfStep - middleY;
        const yy = y * y;
        const a0 = c[o]! + y * c[o + 2]! + yy * (c[o + 5]! + y * c[o + 9]!);
        const a1 = c[o + 1]! + y * c[o + 4]! + yy * c[o + 8]!;
        const a2 = c[o + 3]! + y * c[o + 7]!;
        const a3 = c[o + 6]!;
        const b0 = c[o + 10]! + y * c[o + 12]! + yy * (c[o + 15]! + y * c[o + 19]!);
        const b1 = c[o + 11]! + y * c[o + 14]! + yy * c[o + 18]!;
        const b2 = c[o + 13]! + y * c[o + 17]!;
        const b3 = c[o + 16]!;
        const c0 = c[o + 20]! + y * c[o + 22]! + yy * (c[o + 25]! + y * c[o + 29]!);
        const c1 = c[o + 21]! + y * c[o + 24]! + yy * c[o + 28]!;
        const c2 = c[o + 23]! + y * c[o + 27]!;
        const c3 = c[o + 26]!;
        const rest = before * (rest0 + y * rest1 + yy * (rest2 + y * rest3));
        const x = square * c[o + 30]! - c[o + 31]!;
        const xx = x * x;
        const wRe = a0 + a1 * x + xx * (a2 + a3 * x);
        const wIm = b0 + b1 * x + xx * (b2 + b3 * x);
        i = rest + square * (c0 + c1 * x + xx * (c2 + c3 * x));
        uRe = wRe * dRe - wIm * dIm;
        uIm = wRe * dIm + wIm * dRe;
      } else {
        solver.solve(Math.sqrt(square), before);
        i = solver.current;
        uRe = solver.radioRe * dRe - solver.radioIm * dIm;
        uIm = solver.radioRe * dIm + solver.radioIm * dRe;
      }
      u1Re = uRe;
      u1Im = uIm;
      ear[n] = sound + straight * i;
    }
    if (modes > 0) {
      zRe[0] = aZRe;
      zIm[0] = aZIm;
    }
    if (modes > 1) {
      zRe[1] = bZRe;
      zIm[1] = bZIm;
    }
    if (realModes > 0) yRe[0] = pY;
    if (realModes > 1) yRe[1] = qY;
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
