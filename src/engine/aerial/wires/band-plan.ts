/**
 * The bands in which an aerial is solved: each a quarter wider than it is high, laid so that 87 to 108.75 MHz is one of them.
 *
 * Fixed bands, not bands around what is asked first, so that an answer does not depend on the questions before it.
 */
const RATIO = 1.25;
const ANCHOR = 87e6;

export function bandNumber(frequency: number): number {
  return Math.floor(Math.log(frequency / ANCHOR) / Math.log(RATIO) + 1e-12);
}

/** Lower and upper edge [Hz]. */
export function bandEdges(number: number): { readonly from: number; readonly to: number } {
  return { from: ANCHOR * RATIO ** number, to: ANCHOR * RATIO ** (number + 1) };
}
