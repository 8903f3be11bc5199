import type { EntryLoss } from './building-entry.ts';
import type { Station, UsedMethod } from './description.ts';
import type { FieldStep } from './field-step.ts';
import type { LocationSpread } from './location-spread.ts';
import type { Situation, WorkedStep } from './methods/method-field.ts';
import type { ExternalNoise } from './radio-noise.ts';

/** What one received field was made of, for its figures. */
export interface FieldRecord {
  readonly situation: Situation;
  readonly steps: readonly WorkedStep[];
  readonly horizontalShare: number;
  readonly location: LocationSpread;
  readonly entry: EntryLoss | null;
  readonly noise: ExternalNoise;
}

/** The field of one station where the aerial stands. */
export interface ReceivedField {
  readonly station: Station;
  /** [m] along the ground */
  readonly distance: number;
  /** from the site to the mast [rad], clockwise from true north */
  readonly bearing: number;
  /** elevation of the arriving wave [rad] */
  readonly elevation: number;
  readonly method: UsedMethod;
  /** median field at the aerial [V/m rms], all polarisations; ground reflection, clutter and walls are already in it */
  readonly field: number;
  /** its horizontal and vertical components [V/m rms]: field^2 = horizontal^2 + vertical^2 */
  readonly horizontal: number;
  readonly vertical: number;
  /** standard deviation from place to place [dB]: location variability, and that of the building if indoors */
  readonly spread: number;
  /** from the free-space field down to the field at the aerial; the first step is the free-space field in dB re 1 uV/m */
  readonly steps: readonly FieldStep[];
  /** external noise figure Fa at the carrier [dB above kT0b], P.372 median */
  readonly noiseFigure: number;
  /** whether the public exposure reference level is approached; asked of every station, since a mast may be next door */
  readonly exposure: {
    /** field at the site over the reference level, 1 at the level */
    readonly ratio: number;
    /** reference level [V/m rms] */
    readonly level: number;
    readonly source: string;
    /** true where the caution must be shown: ratio above 0.3 */
    readonly caution: boolean;
  };
  /** in words for the faces to show, where the method is used at the edge of its range */
  readonly remarks: readonly string[];
  readonly record: FieldRecord;
}
