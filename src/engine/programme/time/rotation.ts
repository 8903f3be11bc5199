import { runPhasor } from '../../numeric/index.ts';

const CHUNK = 256;

/** Turns real amplitudes by a steady frequency: x(t) exp(j 2 pi f t); at zero it only clears the imaginary part. */
export class Rotation {
  readonly #frequency: number;
  readonly #rate: number;
  readonly #cos = new Float64Array(CHUNK);
  readonly #sin = new Float64Array(CHUNK);
  #at = CHUNK;
  #phase: number;

  constructor(frequency: number, rate: number) {
    this.#frequency = frequency;
    this.#rate = rate;
    // the first sample has phase zero
    this.#phase = -frequency / rate;
  }

  turn(re: Float64Array, im: Float64Array): void {
    if (this.#frequency === 0) {
      im.fill(0);
      return;
    }
    for (let n = 0; n < re.length; n++) {
      if (this.#at === CHUNK) {
        this.#sin.fill(0);
        this.#phase = runPhasor(this.#phase, this.#cos, this.#sin, 1 / this.#rate, this.#frequency);
        this.#at = 0;
      }
      im[n] = re[n]! * this.#sin[this.#at]!;
      re[n] = re[n]! * this.#cos[this.#at]!;
      this.#at++;
    }
  }
}
