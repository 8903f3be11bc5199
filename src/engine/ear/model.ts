import type { EarDescription } from './description.ts';

export { BANDS } from '../bands.ts';

/** What reaches the ear, band by band; arrays follow BANDS. Levels are those the coupler reads. */
export interface SoundAtEar {
  /** band level of the speech-shaped programme [dB SPL]; -Infinity never appears: use -200 for nothing */
  readonly programme: Float64Array;
  /** band level of unwanted sound made by the set itself: distortion, other stations, noise [dB SPL] */
  readonly disturbance: Float64Array;
  /** room noise taken off by the earpiece [dB], positive */
  readonly attenuation: Float64Array;
  /** reference threshold of a normal ear for pure tones on this coupler [dB SPL] */
  readonly threshold: Float64Array;
  readonly ears: 1 | 2;
}

/** What `hear` worked out on the way and a figure needs to show. */
export interface HearingWorking {
  readonly description: EarDescription;
  readonly sound: SoundAtEar;
  /** [sone] */
  readonly loudness: number;
  /** third-octave levels in the room [dB SPL] */
  readonly room: (frequency: number) => number;
  /** threshold against one normal ear, by BANDS [dB] */
  readonly shift: Float64Array;
  /** spectrum level of masking by noise, by BANDS [dB SPL/Hz] */
  readonly masking: Float64Array;
  /** what SII was given: speech and noise as a free field, by BANDS [dB SPL/Hz] */
  readonly speech: Float64Array;
  readonly noise: Float64Array;
}

/** What the ear makes of it. */
export interface Hearing {
  /** speech intelligibility index, 0 to 1 */
  readonly sii: number;
  /** what each band adds to it; they sum to it */
  readonly siiShares: Float64Array;
  /** best headroom of any band over hearing threshold [dB], and over what masks it (room noise, the set's own disturbance) */
  readonly overThreshold: number;
  readonly overNoise: number;
  /** per band: level over the larger of threshold and masking [dB] */
  readonly headroom: Float64Array;
  /** overall level of the programme as the coupler reads it [dB SPL] */
  readonly level: number;
  /** A-weighted level of the programme, as the free field that would sound the same [dB(A)] */
  readonly levelA: number;
  /** level of the 1 kHz tone in free field that is as loud, in quiet [phon], ISO 532-1; null below threshold */
  readonly loudnessLevel: number | null;
  /** room noise at the ear under the earpiece per band, on the scale of the coupler, so that it stands beside `programme` [dB SPL] */
  readonly roomNoise: Float64Array;
  readonly working: HearingWorking;
}
