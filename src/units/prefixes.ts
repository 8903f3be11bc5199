/** Powers of ten by SI prefix; `u` stands for micro (the sign itself is turned into it when text is tidied) and `K` is taken for kilo. */
export const PREFIX_POWERS: Readonly<Record<string, number>> = {
  f: -15,
  p: -12,
  n: -9,
  u: -6,
  m: -3,
  c: -2,
  d: -1,
  k: 3,
  K: 3,
  M: 6,
  G: 9,
  T: 12,
};

/** The prefixes of engineering, by their power of ten, as people write them. */
export const ENGINEERING_PREFIXES: ReadonlyMap<number, string> = new Map([
  [-15, 'f'],
  [-12, 'p'],
  [-9, 'n'],
  [-6, 'µ'],
  [-3, 'm'],
  [0, ''],
  [3, 'k'],
  [6, 'M'],
  [9, 'G'],
  [12, 'T'],
]);
