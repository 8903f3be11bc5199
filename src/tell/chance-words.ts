import type { Estimate } from '#find';

/**
 * A chance that was counted, with how far the counting may be out: `in 87 of 100 builds (give or take 2)`.
 *
 * @param samples - sets that were built
 */
export function chanceWords({ value, error }: Estimate, samples: number): string {
  if (samples === 0) return 'nothing built yet';
  if (value >= 1) return `in every one of ${samples} builds`;
  if (value <= 0) return `in none of ${samples} builds`;
  const hundredth = Math.round(100 * value);
  const share = hundredth === 0 ? 'fewer than 1 of 100' : hundredth === 100 ? 'more than 99 of 100' : `${hundredth} of 100`;
  if (error === null) return `in ${share} builds (too few yet to say how sure that is)`;
  const out = Math.round(100 * error);
  return `in ${share} builds (give or take ${out < 1 ? 'less than 1' : out})`;
}

/** What "give or take" means: one standard deviation of the luck of the sample holds about two of three (68 of 100, normal distribution). */
export const GIVE_OR_TAKE =
  '"Give or take" is the luck of counting so many sets and no more: two times out of three the true number lies that near. Four times as many sets make it about half or less.';
