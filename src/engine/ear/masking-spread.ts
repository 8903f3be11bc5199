import { BANDS } from '../bands.ts';

const N = BANDS.length;
const TENTH = Math.LN10 / 10;
const LOG10_BANDS = BANDS.map(Math.log10);
/** 3.32 log10(0.89 fi/fk): octaves from the upper edge of band k to band i, row-major by i. */
const OCTAVES_ABOVE = Float64Array.from(
  { length: N * N },
  (_, at) => 3.32 * Math.log10((0.89 * BANDS[Math.floor(at / N)]!) / BANDS[at % N]!),
);

/**
 * Spectrum level of masking by a noise and by its spread upwards in frequency, Z [dB SPL/Hz], by BANDS.
 *
 * Ck = -80 + 0.6 (Bk + 10 log10 fk - 6.353) [dB/octave];
 * Zi = 10 log10{10^(0.1 Ni) + sum over k < i of 10^(0.1 (Bk + 3.32 Ck log10(0.89 fi/fk)))}, Z1 = B1.
 *
 * @param noise - equivalent noise spectrum level N [dB SPL/Hz]
 * @param masker - B, what masks: the larger of the noise and the speech's own masking [dB SPL/Hz]
 * @param out - receives Z
 * Source: ANSI S3.5-1997, one-third-octave procedure, spread of masking.
 */
export function maskingSpread(noise: Float64Array, masker: Float64Array, out: Float64Array): void {
  const slope = new Float64Array(N);
  for (let k = 0; k < N; k++) slope[k] = -80 + 0.6 * (masker[k]! + 10 * LOG10_BANDS[k]! - 6.353);
  out[0] = masker[0]!;
  for (let i = 1; i < N; i++) {
    let sum = Math.exp(TENTH * noise[i]!);
    for (let k = 0; k < i; k++) sum += Math.exp(TENTH * (masker[k]! + slope[k]! * OCTAVES_ABOVE[i * N + k]!));
    out[i] = Math.log(sum) / TENTH;
  }
}
