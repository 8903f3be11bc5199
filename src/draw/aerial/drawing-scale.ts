/** Sizes of paper to nature that rules are made for. Source: ISO 5455:1979, table. */
const STEPS = [1, 2, 5];

/** Recommended scales, paper over nature, from 50:1 down to 1:100 000. */
export const DRAWING_SCALES: readonly number[] = [
  ...STEPS.map((s) => s * 10).reverse(),
  ...[...STEPS].reverse().filter((s) => s > 1),
  ...Array.from({ length: 6 }, (_, decade) => STEPS.map((s) => 1 / (s * 10 ** decade))).flat(),
];

/** `1 : 10`, `5 : 1`. */
export const scaleText = (scale: number): string => (scale >= 1 ? `${Math.round(scale)} : 1` : `1 : ${Math.round(1 / scale)}`);
