import type { SampleSource } from '../../numeric/index.ts';

/** Is told the power of each block ahead of the limiter and behind it: sum of M^2 + S^2/2 over its samples, M and S half sum and half difference. */
export type LimiterReport = (before: number, after: number) => void;

/** Samples worked on at a time. */
export const LIMITER_BLOCK = 192;
/** The gain is worked out once in four samples and runs straight between. */
const STEP = 4;
const STEPS = LIMITER_BLOCK / STEP;
/** The gain is the mean of means over this many steps, twice: at 192 kHz it comes down within 2 ms, along a smooth curve. */
const MEAN = STEPS;
/** Least of the gains asked for within as long as the smoothing reaches, so that it is down in time. */
const REACH = 2 * MEAN - 1;
/** Gains are whole multiples of this, so that running sums of them are exact and never drift. */
const GRAIN = 2 ** -30;
/** The gain recovers with this time constant [s]. */
const RECOVERY = 0.1;
/** Peaks between samples are looked for at samples above this. */
const NEAR_PEAK = 0.9;
/** Below this the limiter counts as at work: -0.1 dB. */
const AT_WORK = 10 ** (-0.1 / 20);

/**
 * Look-ahead limiter: the greater of both channels never exceeds 1, between samples neither, and both keep their balance.
 *
 * In stereo the multiplex sum + difference sin(2 w t) lies between left and right at each instant, so a limit on both limits it. The gain asked
 * for by each peak is held over the reach ahead of it, recovers along an exponential, and is smoothed by two running means, whose weights
 * are positive: a mean of gains that are all low enough is low enough. Peaks between samples are those of the parabola through three of
 * them, below 0.3 % of error at 15 kHz.
 */
export class Limiter {
  /** the latest block, limited */
  readonly first = new Float64Array(LIMITER_BLOCK);
  readonly second = new Float64Array(LIMITER_BLOCK);
  /** least gain ever */
  leastGain = 1;
  /** share of the time at work */
  get share(): number {
    return this.#steps === 0 ? 0 : this.#stepsAtWork / this.#steps;
  }
  readonly #source: SampleSource;
  readonly #stereo: boolean;
  readonly #recovery: number;
  readonly #report: LimiterReport | null;
  readonly #firstIn = new Float64Array(3 * LIMITER_BLOCK);
  readonly #secondIn = new Float64Array(3 * LIMITER_BLOCK);
  readonly #firstNew = this.#firstIn.subarray(2 * LIMITER_BLOCK);
  readonly #secondNew = this.#secondIn.subarray(2 * LIMITER_BLOCK);
  readonly #least = new SlidingLeast(REACH);
  readonly #sum = new RunningSum(MEAN);
  readonly #sumOfSums = new RunningSum(MEAN);
  readonly #gains = new Float64Array(STEPS + 1).fill(1);
  #peakBefore = 0;
  #held = 1;
  #steps = 0;
  #stepsAtWork = 0;

  /** @param rate - of the source [Hz] */
  constructor(source: SampleSource, rate: number, channels: 1 | 2, report: LimiterReport | null) {
    this.#source = source;
    this.#stereo = channels === 2;
    this.#recovery = 1 - Math.exp(-STEP / (rate * RECOVERY));
    this.#report = report;
  }

  /** Limits the block that follows. */
  block(): void {
    if (this.#steps === 0) {
      // two blocks ahead, so that the first block given is the first of the source
      this.#read();
      this.#read();
    }
    this.#gains[0] = this.#gains[STEPS]!;
    this.#read();
    this.#apply(this.#firstIn, this.first);
    if (this.#stereo) this.#apply(this.#secondIn, this.second);
    if (this.#report) this.#report(power(this.#firstIn, this.#secondIn, this.#stereo), power(this.first, this.second, this.#stereo));
    this.#steps += STEPS;
    for (let k = 1; k <= STEPS; k++) {
      const gain = this.#gains[k]!;
      if (gain < this.leastGain) this.leastGain = gain;
      if (gain < AT_WORK) this.#stepsAtWork++;
    }
  }

  /** One block more is read at the end; a block's gains are then known two blocks before it. */
  #read(): void {
    this.#firstIn.copyWithin(0, LIMITER_BLOCK);
    if (this.#stereo) this.#secondIn.copyWithin(0, LIMITER_BLOCK);
    this.#source.next(this.#firstNew, this.#secondNew);
    for (let k = 1; k <= STEPS; k++) {
      // the last step of the block waits for the sample behind it
      const from = 2 * LIMITER_BLOCK + STEP * (k - 2);
      let peak = peakIn(this.#firstIn, from);
      if (this.#stereo) peak = Math.max(peak, peakIn(this.#secondIn, from));
      // the gain at a step's beginning acts on the step before it too
      const asked = 1 / Math.max(1, peak, this.#peakBefore);
      this.#peakBefore = peak;
      const least = this.#least.push(asked);
      this.#held = Math.min(least, this.#held + (1 - this.#held) * this.#recovery);
      const grains = Math.floor(this.#held / GRAIN);
      this.#gains[k] = this.#sumOfSums.push(this.#sum.push(grains)) * (GRAIN / (MEAN * MEAN));
    }
  }

  #apply(from: Float64Array, to: Float64Array): void {
    const gains = this.#gains;
    for (let k = 0, n = 0; k < STEPS; k++) {
      const gain = gains[k]!;
      const slope = (gains[k + 1]! - gain) / STEP;
      for (let i = 0; i < STEP; i++, n++) to[n] = from[n]! * (gain + slope * i);
    }
  }
}

/** Greatest magnitude over a step, at its samples and near them. */
function peakIn(x: Float64Array, from: number): number {
  let peak = 0;
  for (let n = from; n < from + STEP; n++) {
    const here = Math.abs(x[n]!);
    if (here > peak) peak = here;
    if (here < NEAR_PEAK) continue;
    const rise = (x[n + 1]! - x[n - 1]!) / 2;
    const bend = x[n + 1]! - 2 * x[n]! + x[n - 1]!;
    if (Math.abs(rise) >= Math.abs(bend) / 2) continue; // the parabola's top is nearer to another sample, or there is none
    peak = Math.max(peak, Math.abs(x[n]! - (rise * rise) / (2 * bend)));
  }
  return peak;
}

/** Sum over a block of M^2 + S^2/2. */
function power(a: Float64Array, b: Float64Array, stereo: boolean): number {
  let sum = 0;
  for (let n = 0; n < LIMITER_BLOCK; n++) {
    const other = stereo ? b[n]! : a[n]!;
    sum += ((a[n]! + other) / 2) ** 2 + ((a[n]! - other) / 2) ** 2 / 2;
  }
  return sum;
}

/** Least of the last so many values: a queue of those that are still to be least, rising. */
class SlidingLeast {
  readonly #reach: number;
  readonly #values = new Float64Array(128);
  readonly #times = new Float64Array(128);
  #head = 0;
  #length = 0;
  #time = 0;
  constructor(reach: number) {
    this.#reach = reach;
  }
  push(value: number): number {
    while (this.#length > 0 && this.#values[(this.#head + this.#length - 1) & 127]! >= value) this.#length--;
    const end = (this.#head + this.#length++) & 127;
    this.#values[end] = value;
    this.#times[end] = this.#time;
    if (this.#times[this.#head]! <= this.#time - this.#reach) {
      this.#head = (this.#head + 1) & 127;
      this.#length--;
    }
    this.#time++;
    return this.#values[this.#head]!;
  }
}

/** Sum of the last so many whole numbers. */
class RunningSum {
  readonly #last: Float64Array;
  #sum = 0;
  #at = 0;
  constructor(length: number) {
    this.#last = new Float64Array(length);
  }
  push(value: number): number {
    this.#sum += value - this.#last[this.#at]!;
    this.#last[this.#at] = value;
    this.#at = (this.#at + 1) % this.#last.length;
    return this.#sum;
  }
}
