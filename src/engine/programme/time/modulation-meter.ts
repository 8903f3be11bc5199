/** Blocks of 1 ms in a second, and seconds that BS.412 averages over. */
const BLOCKS = 1000;
const SECONDS = 60;

/** Peak, rms and densest 60 s of what modulates the carrier; every sample counts alike. Source: Rec. ITU-R BS.412-9, sec. 2.3, note. */
export class Meter {
  peak = 0;
  #blocks = 0;
  #samples = 0;
  #sum = 0;
  /** sum of squares of each of the last 60 s, and of the second going on */
  readonly #seconds = new Float64Array(SECONDS);
  #second = 0;
  #densest = 0;

  add(block: Float64Array): void {
    let sum = 0;
    let peak = this.peak;
    for (let n = 0; n < block.length; n++) {
      const x = block[n]!;
      sum += x * x;
      if (x > peak) peak = x;
      else if (-x > peak) peak = -x;
    }
    this.peak = peak;
    this.#sum += sum;
    this.#second += sum;
    this.#samples += block.length;
    if (++this.#blocks % BLOCKS === 0) this.#secondEnds();
  }

  /** length metered [s] */
  get duration(): number {
    return this.#blocks / BLOCKS;
  }

  /** rms over all */
  get rms(): number {
    return this.#samples === 0 ? 0 : Math.sqrt(this.#sum / this.#samples);
  }

  /** greatest rms over any 60 s that begin with a second of the programme, or over all where it is shorter */
  get densestRms(): number {
    if (this.#blocks <= BLOCKS * SECONDS) return this.rms;
    return Math.sqrt(this.#densest / (SECONDS * (this.#samples / this.duration)));
  }

  #secondEnds(): void {
    const ended = this.#blocks / BLOCKS;
    this.#seconds[(ended - 1) % SECONDS] = this.#second;
    this.#second = 0;
    if (ended < SECONDS) return;
    let window = 0;
    for (let k = 0; k < SECONDS; k++) window += this.#seconds[k]!;
    this.#densest = Math.max(this.#densest, window);
  }
}
