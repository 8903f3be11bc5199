import type { Extent } from '../plane/extent.ts';
import type { Vector } from '../plane/vector.ts';
import type { Mark } from '../svg/mark.ts';
import { clipArea, clipCurve } from './curve-pieces.ts';
import type { Series } from './series.ts';
import { DOT, seriesLook } from './series-look.ts';

/** Where a pair of values lies on the paper; null where a logarithm has no place for it. */
export type Place = (x: number, y: number) => Vector | null;

/** The band a curve likely lies in. */
export function bandMarks(s: Series, i: number, at: Place, frame: Extent): readonly Mark[] {
  if (!s.band || s.band.length < 2) return [];
  const edge = [...s.band.map((b) => at(b.x, b.high)), ...[...s.band].reverse().map((b) => at(b.x, b.low))];
  const points = clipArea(
    edge.filter((p): p is Vector => p !== null),
    frame,
  );
  return points.length < 3
    ? []
    : [{ kind: 'area', points, fill: seriesLook(i).stroke, opacity: 0.16, labels: { series: i, part: 'band' } }];
}

/** The curve, and the last point of it that is seen. */
export function curveMarks(
  s: Series,
  i: number,
  at: Place,
  frame: Extent,
): { readonly marks: readonly Mark[]; readonly end: Vector | null } {
  const look = seriesLook(i);
  const points = s.points.map((p) => (p.y === null ? null : at(p.x, p.y)));
  const inside = (p: Vector) =>
    p.x >= frame.left - 1e-6 && p.x <= frame.right + 1e-6 && p.y >= frame.top - 1e-6 && p.y <= frame.bottom + 1e-6;
  const lines = s.look === 'dots' ? [] : clipCurve(points, frame);
  const alone = points.filter((p, k): p is Vector => p !== null && inside(p) && !points[k - 1] && !points[k + 1]);
  const dots = s.look === 'dots' || s.look === 'line and dots' ? points.filter((p): p is Vector => p !== null && inside(p)) : alone;
  const marks: Mark[] = [
    ...lines.map((piece): Mark => ({ kind: 'polyline', points: piece, ...look, labels: { series: i, part: 'line' } })),
    ...dots.map(
      (centre): Mark => ({
        kind: 'circle',
        centre,
        radius: DOT,
        fill: look.stroke,
        stroke: look.stroke,
        width: 0.1,
        labels: { series: i, part: 'dot' },
      }),
    ),
  ];
  const candidates = [...lines.map((piece) => piece.at(-1)!), ...dots];
  const end = candidates.length === 0 ? null : candidates.reduce((a, b) => (b.x > a.x ? b : a));
  return { marks, end };
}
