import type { Built } from './built.ts';
import { quantile } from './estimate.ts';

/** Values that 10, 50 and 90 of 100 stay below. */
export type Quantiles = readonly [number, number, number];

/** How far the dials of sets that were built scatter. */
export interface DialSpread {
  /** where the dial stands for the station, as a share of its rotation; null where no set reaches it */
  readonly place: Quantiles | null;
  /** by how much the set is off with the dial where it was meant to stand [Hz]; null where none can be built */
  readonly off: Quantiles | null;
}

/** @param meant - the set without any error */
export function dialSpread(meant: Built, built: readonly Built[]): DialSpread {
  return {
    place: quantiles(built.flatMap(({ place }) => (place === null ? [] : [place]))),
    off: quantiles(
      built.flatMap((b) => {
        const off = offMeant(meant, b);
        return off === null ? [] : [off];
      }),
    ),
  };
}

/** By how much a set is off with the dial where it was meant to stand [Hz]; null for what cannot be built. */
export const offMeant = (meant: Built, { frequency }: Built): number | null =>
  meant.frequency === null || frequency === null ? null : frequency - meant.frequency;

const quantiles = (values: readonly number[]): Quantiles | null =>
  values.length === 0 ? null : [quantile(values, 0.1)!, quantile(values, 0.5)!, quantile(values, 0.9)!];
