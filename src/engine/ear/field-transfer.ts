import { BANDS } from '../bands.ts';
import { diffuseFieldThreshold, freeFieldThreshold } from './reference-field-threshold.ts';
import { SII_INTERNAL_NOISE } from './sii-tables.ts';
import { BINAURAL_ADVANTAGE } from './speech-intelligibility-index.ts';

/**
 * Threshold of one normal ear for tones in frontal free field, by BANDS [dB SPL]: ISO 389-7 (two ears) plus the binaural advantage.
 *
 * It is the hinge between coupler and field: a level on a coupler is worth the free-field level that is as far above this
 * threshold as the coupler level is above the reference threshold of that coupler. That is right for what is just audible; where room noise rules, it is on the safe side: loudness balances of
 * a supra-aural earphone (IEC 60645-2) give free-field levels 2.4 dB higher on average (-3 to +5 dB), since under an earphone the body's own
 * noise raises the threshold.
 */
export const ONE_EAR_FIELD_THRESHOLD: Float64Array = Float64Array.from(BANDS, (f) => freeFieldThreshold(f) + BINAURAL_ADVANTAGE);

/** Free-field level that sounds as a diffuse field of 0 dB does, by BANDS [dB]: difference of the two reference thresholds of ISO 389-7. */
export const DIFFUSE_TO_FREE: Float64Array = Float64Array.from(BANDS, (f) => freeFieldThreshold(f) - diffuseFieldThreshold(f));

/**
 * Critical ratio by BANDS: level of a just audible tone over the spectrum level of the noise that masks it [dB].
 *
 * The one that the two standards imply: SII's internal noise X is the external noise that would give the threshold in quiet, so the ratio is
 * threshold of one ear less X. 16.6 dB at 1 kHz; measured about 18 dB (Hawkins & Stevens 1950).
 */
export const CRITICAL_RATIO: Float64Array = ONE_EAR_FIELD_THRESHOLD.map((t, i) => t - SII_INTERNAL_NOISE[i]!);
