import { GivenError } from '#engine';

/** One curve. */
export interface Series {
  readonly label: string;
  /** in order along the curve; `y` null where there is no value: the curve is interrupted */
  readonly points: readonly { readonly x: number; readonly y: number | null }[];
  /** between which the true value likely lies */
  readonly band?: readonly { readonly x: number; readonly low: number; readonly high: number }[];
  /** a line where left out */
  readonly look?: 'line' | 'dots' | 'line and dots';
}

/** Something to be pointed out. */
export type PlotMark =
  | { readonly kind: 'x'; readonly x: number; readonly label: string }
  | { readonly kind: 'y'; readonly y: number; readonly label: string }
  | { readonly kind: 'point'; readonly x: number; readonly y: number; readonly label: string };

/** Nothing that is measured is larger; beyond it decades overflow. */
export const LARGEST = 1e100;

/** Refuses what is neither a number nor an honest gap. */
export function checkSeries(series: readonly Series[], marks: readonly PlotMark[]): void {
  const must = (path: string, value: number) => {
    if (!(Math.abs(value) <= LARGEST))
      throw new GivenError(path, `${value}`, 'only numbers can be drawn', 'Give a number; null for a y that does not exist.');
  };
  series.forEach((s, i) => {
    s.points.forEach((p, j) => {
      must(`series[${i}].points[${j}].x`, p.x);
      if (p.y !== null) must(`series[${i}].points[${j}].y`, p.y);
    });
    s.band?.forEach((b, j) => {
      for (const key of ['x', 'low', 'high'] as const) must(`series[${i}].band[${j}].${key}`, b[key]);
    });
  });
  marks.forEach((m, i) => {
    if (m.kind !== 'y') must(`options.marks[${i}].x`, m.x);
    if (m.kind !== 'x') must(`options.marks[${i}].y`, m.y);
  });
}
