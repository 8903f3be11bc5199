import { bandwidthLevel, SOUND_BANDS, thirdOctave } from '../bands.ts';
import { SOUND_RATE } from '../listen/index.ts';
import { type FourierTransform, fourierTransform, GaussianNoise, linear } from '../numeric/index.ts';
import { pressureOf } from './pressure.ts';

/** Length of the filter, and of a block; transforms are twice as long. Bands have their levels within 0.15 dB from 100 Hz, 0.35 dB below. */
const TAPS = 1 << 15;

/**
 * Gaussian noise with a given spectrum in one-third octaves from 50 Hz to 16 kHz, as sound pressure [Pa] at 48 kHz.
 *
 * White noise from a seed through a linear-phase filter; its density runs straight in dB over log f between the middles of the bands, each band then
 * brought to its level. What lies outside is left out: nothing of it is heard, and rumble would take the room of a sound file. It never repeats; blocks
 * are cut inside, so that the block asked for never changes the result.
 */
export class BandNoise {
  readonly #white: GaussianNoise;
  readonly #transform: FourierTransform;
  readonly #filterRe = new Float64Array(2 * TAPS);
  readonly #filterIm = new Float64Array(2 * TAPS);
  /** three blocks of white noise: windows of the first two and of the last two go through one transform, as its real and imaginary part */
  readonly #input = new Float64Array(3 * TAPS);
  readonly #re = new Float64Array(2 * TAPS);
  readonly #im = new Float64Array(2 * TAPS);
  readonly #ready = new Float64Array(2 * TAPS);
  #at = 2 * TAPS;

  /**
   * @param levels - of the bands [dB SPL], by SOUND_BANDS
   * @param seed - whole number, 0 to 2^32 - 1
   */
  constructor(levels: Float64Array, seed: number) {
    this.#white = new GaussianNoise(seed);
    this.#transform = fourierTransform(2 * TAPS);
    this.#filterRe.set(noiseTaps(levels));
    this.#transform.forward(this.#filterRe, this.#filterIm);
    this.#white.next(this.#input.subarray(2 * TAPS));
  }

  /** Adds the samples that follow [Pa]. */
  add(out: Float64Array): void {
    for (let n = 0; n < out.length; ) {
      if (this.#at === 2 * TAPS) this.#refill();
      const count = Math.min(out.length - n, 2 * TAPS - this.#at);
      for (let k = 0; k < count; k++) out[n + k] = out[n + k]! + this.#ready[this.#at + k]!;
      n += count;
      this.#at += count;
    }
  }

  #refill(): void {
    const [re, im, input] = [this.#re, this.#im, this.#input];
    input.copyWithin(0, 2 * TAPS);
    this.#white.next(input.subarray(TAPS));
    re.set(input.subarray(0, 2 * TAPS));
    im.set(input.subarray(TAPS));
    this.#transform.forward(re, im);
    for (let k = 0; k < 2 * TAPS; k++) {
      const a = re[k]!;
      const b = im[k]!;
      const c = this.#filterRe[k]!;
      const d = this.#filterIm[k]!;
      re[k] = a * c - b * d;
      im[k] = a * d + b * c;
    }
    this.#transform.inverse(re, im);
    this.#ready.set(re.subarray(TAPS));
    this.#ready.set(im.subarray(TAPS), TAPS);
    this.#at = 0;
  }
}

/** Filter that gives unit white noise the levels [Pa]. */
function noiseTaps(levels: Float64Array): Float64Array {
  const bands = SOUND_BANDS.map(thirdOctave);
  const logs = bands.map((b) => Math.log(b.middle));
  const densities = SOUND_BANDS.map((f, b) => levels[b]! - bandwidthLevel(f));
  const re = new Float64Array(TAPS);
  const im = new Float64Array(TAPS);
  const step = SOUND_RATE / TAPS;
  for (const [b, { low, high }] of bands.entries()) {
    const first = Math.ceil(low / step);
    const after = Math.ceil(high / step);
    let power = 0;
    for (let k = first; k < after; k++) {
      re[k] = 10 ** (linear(logs, densities, Math.log(k * step)) / 20);
      power += re[k]! ** 2;
    }
    // a bin stands for the step around it, and the band for its own width, which at 50 Hz is not a whole number of steps
    const mean = Math.sqrt(power / (after - first));
    // unit white noise has 2/rate in each hertz
    const wanted = pressureOf(densities[b]!) * Math.sqrt(SOUND_RATE / 2);
    for (let k = first; k < after; k++) re[k] = (re[k]! * wanted) / mean;
  }
  for (let k = 1; k < TAPS / 2; k++) re[TAPS - k] = re[k]!;
  fourierTransform(TAPS).inverse(re, im);
  // the response centred, under Hann's window
  return Float64Array.from({ length: TAPS }, (_, n) => re[(n + TAPS / 2) % TAPS]! * (0.5 - 0.5 * Math.cos((2 * Math.PI * n) / TAPS)));
}
