import type { Figure } from '../figure.ts';
import type { FieldMethod, Station } from './description.ts';

/** One step between the mast and the aerial, in dB (negative is a loss). */
export interface FieldStep {
  readonly label: string;
  readonly decibels: number;
  readonly source: string;
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
  /** method in fact used */
  readonly method: Exclude<FieldMethod, 'auto'> | 'measured';
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
  figures(): readonly Figure[];
}
