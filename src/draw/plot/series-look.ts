import type { Role } from '../svg/palette.ts';

const COLOURS: readonly Role[] = ['series-1', 'series-2', 'series-3', 'series-4', 'series-5', 'series-6'];
/** [mm]; a curve is told from its neighbours without its colour. */
const DASHES: readonly (readonly number[] | undefined)[] = [undefined, [3, 1.2], [0.9, 0.9], [4.5, 1, 0.9, 1], [6, 1.6], [1.6, 1.6]];

/** Radius of a dot on a curve [mm]. */
export const DOT = 0.8;

export interface Look {
  /** dots alone, no line */
  readonly dots?: boolean;
  readonly stroke: Role;
  readonly width: number;
  readonly dash?: readonly number[];
}

/** How the n-th curve is drawn: six colours, six dashes, then each colour with the next dash. */
export function seriesLook(n: number): Look {
  const dash = DASHES[(n + Math.floor(n / COLOURS.length)) % DASHES.length];
  return { stroke: COLOURS[n % COLOURS.length]!, width: 0.5, ...(dash ? { dash } : {}) };
}
