import { placeLabel } from '../placing/label.ts';
import { Occupied, WEIGHT } from '../placing/occupied.ts';
import type { Extent } from '../plane/extent.ts';
import { distance, type Vector } from '../plane/vector.ts';
import { type Mark, textBox } from '../svg/mark.ts';
import type { Place } from './curve-marks.ts';
import { TICK_SIZE } from './frame-marks.ts';
import type { PlotMark } from './series.ts';

/** Shorter steps of a curve [mm] make no difference to where a label may stand. */
const STEP = 1;

function addCurve(points: readonly Vector[], occupied: Occupied): void {
  let from = points[0]!;
  points.forEach((to, i) => {
    if (distance(from, to) < STEP && i < points.length - 1) return;
    occupied.addLine(from, to, WEIGHT.faint);
    from = to;
  });
}

/** Points pointed out, their labels clear of all other text. */
export function pointMarks(marks: readonly PlotMark[], at: Place, frame: Extent, drawn: readonly Mark[]): readonly Mark[] {
  if (!marks.some((m) => m.kind === 'point')) return [];
  const occupied = new Occupied();
  for (const m of drawn) {
    if (m.kind === 'text') occupied.addText(textBox(m));
    else if (m.kind === 'line' && m.stroke !== 'faint') occupied.addLine(m.from, m.to, WEIGHT.extension);
    else if (m.kind === 'polyline') addCurve(m.points, occupied);
  }
  return marks.flatMap((m) => {
    const point = m.kind === 'point' ? at(m.x, m.y) : null;
    if (m.kind !== 'point' || !point || point.x < frame.left || point.x > frame.right || point.y < frame.top || point.y > frame.bottom)
      return [];
    const dot: Mark = { kind: 'circle', centre: point, radius: 1, fill: 'paper', stroke: 'accent', width: 0.4, labels: { mark: 'point' } };
    return [dot, ...placeLabel(point, m.label, { size: TICK_SIZE, fill: 'accent', clear: 1.3, labels: { mark: 'name' } }, occupied)];
  });
}
