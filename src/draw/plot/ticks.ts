/** Where an axis is marked. */
export interface Ticks {
  /** with a number */
  readonly major: readonly number[];
  /** without */
  readonly minor: readonly number[];
  /** decimal places that tell one major tick from the next; null where a power of ten, or each its own decade, reads better */
  readonly places: number | null;
  /** figures that tell one from the next where `places` is null */
  readonly figures: number;
}

/** Steps beyond these are written with a power of ten. */
const SMALLEST_PLAIN = 1e-6;
const LARGEST_PLAIN = 1e6;

/** Steps of 1, 2 or 5 of a decade: the one that comes nearest to the number of ticks wanted. */
export function niceStep(range: number, wanted: number): number {
  const raw = range / wanted;
  const decade = 10 ** Math.floor(Math.log10(raw));
  const ratio = raw / decade;
  // the borders lie at the geometric means of neighbouring steps
  const step = ratio < Math.SQRT2 ? 1 : ratio < Math.sqrt(10) ? 2 : ratio < Math.sqrt(50) ? 5 : 10;
  return step * decade;
}

/** The greatest of 1, 2 and 5 of a decade that is not above a number. */
export function roundDown(value: number): number {
  const decade = 10 ** Math.floor(Math.log10(value));
  return decade * (value >= 5 * decade ? 5 : value >= 2 * decade ? 2 : 1);
}

/** Ticks on an even scale, at whole multiples of a nice step from `from` to `to`, which differ by more than the 12th figure. */
export function linearTicks(from: number, to: number, wanted: number): Ticks {
  const step = niceStep(to - from, wanted);
  const largest = Math.max(Math.abs(from), Math.abs(to));
  const figures = Math.min(15, Math.max(1, Math.ceil(Math.log10(largest / step)) + 1));
  const long = step < SMALLEST_PLAIN || step >= LARGEST_PLAIN;
  const places = long ? null : Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  const slack = 1e-9 * (to - from);
  const major: number[] = [];
  // multiplied, never added up, so that 0.3 is 0.3; and no -0
  for (let i = Math.ceil((from - slack) / step); i * step <= to + slack; i++) major.push(Number((i * step).toPrecision(15)) + 0);
  return { major, minor: [], places, figures };
}

/** Ticks on a logarithmic scale: decades; with their 2 and 5 where there are few; even ones where there is hardly one. */
export function logTicks(from: number, to: number, wanted: number): Ticks {
  const decades = Math.log10(to / from);
  if (decades < 1) return linearTicks(from, to, wanted);
  const within = (v: number) => v >= from * (1 - 1e-9) && v <= to * (1 + 1e-9);
  const first = Math.floor(Math.log10(from) - 1e-9);
  const last = Math.ceil(Math.log10(to) + 1e-9);
  const every = Math.max(1, Math.round(decades / wanted));
  const digits = decades < wanted / 3 + 0.5 ? [1, 2, 5] : [1];
  const major: number[] = [];
  const minor: number[] = [];
  for (let p = first; p <= last; p++)
    for (let digit = 1; digit <= 9; digit++) {
      const v = Number(`${digit}e${p}`);
      if (!within(v)) continue;
      const chief = digits.includes(digit) && (digit !== 1 || p % every === 0);
      if (chief) major.push(v);
      else if (every === 1) minor.push(v);
    }
  return { major, minor, places: null, figures: 3 };
}
