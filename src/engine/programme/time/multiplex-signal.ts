import type { SampleSource } from '../../numeric/index.ts';
import type { ProgrammeModulation } from '../modulation.ts';
import { PILOT_FREQUENCY, STEREO_AUDIO_SHARE, SUBCARRIER_FREQUENCY } from '../multiplex.ts';
import { LIMITER_BLOCK, type Limiter } from './limiter.ts';
import type { Meter } from './modulation-meter.ts';

/** Rate of the multiplex [Hz]: a block of 1 ms holds whole periods of pilot and subcarrier, so that they never drift against each other. */
export const MULTIPLEX_RATE = 1000 * LIMITER_BLOCK;

const sineTable = (frequency: number): Float64Array =>
  Float64Array.from({ length: LIMITER_BLOCK }, (_, n) => Math.sin((2 * Math.PI * ((n * frequency) % MULTIPLEX_RATE)) / MULTIPLEX_RATE));
const PILOT = sineTable(PILOT_FREQUENCY);
const SUBCARRIER = sineTable(SUBCARRIER_FREQUENCY);

/**
 * What modulates the carrier, at 192 kHz: deviation [Hz], or depth [1].
 *
 * Stereo: D [0.9 (M + S sin 2 w t) + p sin w t], w = 2 pi 19 kHz, M and S half sum and half difference of left and right: the subcarrier crosses zero,
 * rising, whenever the pilot crosses it. Mono: D M. AM: m M.
 * Source: Rec. ITU-R BS.450-3, sec. 2; 47 CFR 73.322 (a).
 */
export class MultiplexSignal implements SampleSource {
  readonly #limiter: Limiter;
  readonly #meter: Meter;
  readonly #audio: number;
  readonly #pilot: number;
  readonly #stereo: boolean;
  readonly #block = new Float64Array(LIMITER_BLOCK);
  #at = LIMITER_BLOCK;

  /** @param pilotShare - p, of full deviation */
  constructor(limiter: Limiter, modulation: ProgrammeModulation, pilotShare: number, meter: Meter) {
    this.#limiter = limiter;
    this.#meter = meter;
    this.#stereo = modulation.kind === 'fm' && modulation.stereo;
    const full = modulation.kind === 'fm' ? modulation.deviation : modulation.depth;
    this.#audio = this.#stereo ? STEREO_AUDIO_SHARE * full : full;
    this.#pilot = this.#stereo ? pilotShare * full : 0;
  }

  next(first: Float64Array, _second: Float64Array): void {
    for (let n = 0; n < first.length; ) {
      if (this.#at === LIMITER_BLOCK) this.#advance();
      const count = Math.min(first.length - n, LIMITER_BLOCK - this.#at);
      for (let k = 0; k < count; k++) first[n + k] = this.#block[this.#at + k]!;
      n += count;
      this.#at += count;
    }
  }

  #advance(): void {
    const { first: a, second: b } = this.#limiter;
    const out = this.#block;
    this.#limiter.block();
    this.#at = 0;
    const half = this.#audio / 2;
    if (this.#stereo)
      for (let n = 0; n < LIMITER_BLOCK; n++) out[n] = half * (a[n]! + b[n]! + (a[n]! - b[n]!) * SUBCARRIER[n]!) + this.#pilot * PILOT[n]!;
    else for (let n = 0; n < LIMITER_BLOCK; n++) out[n] = this.#audio * a[n]!;
    this.#meter.add(out);
  }
}
