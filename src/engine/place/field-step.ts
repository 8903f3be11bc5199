/** One step between the mast and the aerial, in dB (negative is a loss). */
export interface FieldStep {
  readonly label: string;
  readonly decibels: number;
  readonly source: string;
}
