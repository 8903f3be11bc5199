import { spread } from '../placing/spread.ts';
import { type Vector, vector } from '../plane/vector.ts';
import type { Labels, Mark } from '../svg/mark.ts';
import type { Role } from '../svg/palette.ts';
import { textWidth, wrapText } from '../svg/text-width.ts';
import { DOT, type Look } from './series-look.ts';

/** A label in a column beside a plot, led to from a point of it. */
export interface EndLabel {
  readonly lines: readonly string[];
  readonly from: Vector;
  /** of the short sample before the text; none where it is no curve */
  readonly sample: Look | null;
  readonly fill: Role;
  readonly labels: Labels;
}

const END_SIZE = 3;
const LEADING = 1.35;
const SAMPLE = 7;
const LEAD = 5;

/** A label broken into lines no longer than `longest` [mm]. */
export const endLines = (label: string, longest = 42): readonly string[] => wrapText(label, END_SIZE, longest);

function sampleMark({ dots, ...look }: Look, at: Vector, side: 1 | -1): Mark {
  const end = vector(at.x + side * SAMPLE, at.y);
  if (!dots) return { kind: 'line', from: at, to: end, ...look };
  const centre = vector((at.x + end.x) / 2, at.y);
  return { kind: 'circle', centre, radius: DOT, fill: look.stroke, stroke: look.stroke, width: 0.1 };
}

/** Width the column takes, the leaders counted [mm]. */
export function columnWidth(labels: readonly Pick<EndLabel, 'lines' | 'sample'>[]): number {
  return Math.max(
    0,
    ...labels.map((l) => LEAD + (l.sample ? SAMPLE + 1 : 0) + Math.max(...l.lines.map((line) => textWidth(line, END_SIZE)))),
  );
}

/** Height the column takes at least [mm]. */
export const columnHeight = (labels: readonly Pick<EndLabel, 'lines'>[]): number => labels.reduce((sum, l) => sum + heightOf(l), 0);

const heightOf = (l: Pick<EndLabel, 'lines'>): number => l.lines.length * END_SIZE * LEADING + 0.6;

/**
 * Writes labels one under the other, each as near as may be to the height of its point.
 *
 * @param side - 1 for a column to the right of `edge`, -1 to the left of it
 */
export function drawEndLabels(labels: readonly EndLabel[], edge: number, top: number, bottom: number, side: 1 | -1): readonly Mark[] {
  const at = spread(
    labels.map((l) => ({ at: l.from.y, size: heightOf(l) })),
    top,
    bottom,
  );
  return labels.flatMap((l, i) => {
    const y = at[i]!;
    const start = edge + side * LEAD;
    const marks: Mark[] = [{ kind: 'line', from: l.from, to: vector(start - side * 0.8, y), stroke: 'quiet', width: 0.15 }];
    let x = start;
    if (l.sample) {
      marks.push(sampleMark(l.sample, vector(x, y), side));
      x += side * (SAMPLE + 1);
    }
    l.lines.forEach((text, k) => {
      const base = y - heightOf(l) / 2 + 0.3 + (k + 0.76) * END_SIZE * LEADING;
      marks.push({
        kind: 'text',
        at: vector(x, base),
        text,
        size: END_SIZE,
        anchor: side === 1 ? 'start' : 'end',
        angle: 0,
        fill: l.fill,
        labels: l.labels,
      });
    });
    return marks;
  });
}
