import { BANDS, type ThirdOctave, thirdOctave } from '../bands.ts';
import { bandPower, type PowerSpectrum } from './power-spectrum.ts';

/** The bands in which speech is counted, 160 Hz to 8 kHz. */
export const SPEECH_THIRDS: readonly ThirdOctave[] = BANDS.map(thirdOctave);

/** Band levels as powers, by summing bins with their share within the exact edges [V^2]. */
export const thirdOctavePowers = (spectrum: PowerSpectrum, bands: readonly ThirdOctave[] = SPEECH_THIRDS): Float64Array =>
  Float64Array.from(bands, (b) => bandPower(spectrum, b.low, b.high));
