import type { AxisOptions } from './axis.ts';

/** One set as it came out of some hand. */
export interface BuiltDot {
  /** where it stands along the picture, in the unit of its axis; null where the station is not reached on the dial */
  readonly x: number | null;
  /** best band over what the ear needs [dB]; null for no sound at all */
  readonly headroom: number | null;
  readonly outcome: 'understood' | 'heard' | 'silent';
}

/** Values that 10, 50 and 90 of 100 stay below. */
export type Spread = readonly [number, number, number];

export interface Dots {
  readonly dots: readonly BuiltDot[];
  /** the set as it was meant */
  readonly meant: BuiltDot;
  /** what the picture runs along, as `x` of the dots gives it */
  readonly x: AxisOptions;
  /** of `x` and of the headroom [dB], over the sets that have one; null of none */
  readonly spread: { readonly x: Spread | null; readonly headroom: Spread | null };
}
