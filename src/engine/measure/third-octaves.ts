import { BANDS } from '../ear/index.ts';
import { bandPower, type PowerSpectrum } from './power-spectrum.ts';

/** A one-third-octave band, exact to its edges. */
export interface ThirdOctave {
  /** as it is called [Hz] */
  readonly nominal: number;
  /** exact [Hz] */
  readonly middle: number;
  readonly low: number;
  readonly high: number;
}

/**
 * The band of a nominal frequency: middle 10^(n/10), edges a twentieth of a decade either side.
 *
 * Source: IEC 61260-1:2014, 5.2 to 5.5: octave ratio G = 10^(3/10), mid-band 1000 G^(x/3), edges by G^(1/6).
 */
export function thirdOctave(nominal: number): ThirdOctave {
  const n = Math.round(10 * Math.log10(nominal));
  return { nominal, middle: 10 ** (n / 10), low: 10 ** ((n - 0.5) / 10), high: 10 ** ((n + 0.5) / 10) };
}

/** The bands in which speech is counted, 160 Hz to 8 kHz. */
export const SPEECH_THIRDS: readonly ThirdOctave[] = BANDS.map(thirdOctave);

/** Band levels as powers, by summing bins with their share within the exact edges [V^2]. */
export const thirdOctavePowers = (spectrum: PowerSpectrum, bands: readonly ThirdOctave[] = SPEECH_THIRDS): Float64Array =>
  Float64Array.from(bands, (b) => bandPower(spectrum, b.low, b.high));
