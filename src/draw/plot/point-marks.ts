import { placeLabel } from '../placing/label.ts';
import { Occupied, WEIGHT } from '../placing/occupied.ts';
import type { Extent } from '../plane/extent.ts';
import { type Mark, textBox } from '../svg/mark.ts';
import type { Place } from './curve-marks.ts';
import { TICK_SIZE } from './frame-marks.ts';
import type { PlotMark } from './series.ts';

/** Points pointed out, their labels clear of all other text. */
export function pointMarks(marks: readonly PlotMark[], at: Place, frame: Extent, drawn: readonly Mark[]): readonly Mark[] {
  const occupied = new Occupied();
  for (const m of drawn) {
    if (m.kind === 'text') occupied.addText(textBox(m));
    else if (m.kind === 'line' && m.stroke !== 'faint') occupied.addLine(m.from, m.to, WEIGHT.extension);
    else if (m.kind === 'polyline')
      for (let i = 0; i + 1 < m.points.length; i++) occupied.addLine(m.points[i]!, m.points[i + 1]!, WEIGHT.faint);
  }
  return marks.flatMap((m) => {
    const point = m.kind === 'point' ? at(m.x, m.y) : null;
    if (m.kind !== 'point' || !point || point.x < frame.left || point.x > frame.right || point.y < frame.top || point.y > frame.bottom)
      return [];
    const dot: Mark = { kind: 'circle', centre: point, radius: 1, fill: 'paper', stroke: 'accent', width: 0.4, labels: { mark: 'point' } };
    return [dot, ...placeLabel(point, m.label, { size: TICK_SIZE, fill: 'accent', clear: 1.3, labels: { mark: 'name' } }, occupied)];
  });
}
