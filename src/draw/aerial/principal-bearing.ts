import type { Piece } from './conductors.ts';
import { pictureOf } from './picture.ts';
import { minus } from './space.ts';
import { orthogonalViews } from './view.ts';

const QUARTER = Math.PI / 2;
/** Bearings nearer than this are one [rad]. */
const SAME = 1e-3;
/** Of a tangle of wires no more directions than this are tried. */
const MOST = 40;

/** The bearing within 45 degrees of north that has the same four quarters. */
const quarter = (bearing: number): number => bearing - QUARTER * Math.round(bearing / QUARTER);

/**
 * Bearing the front view looks towards [rad], within 45 degrees of north.
 *
 * Of the directions the wires take on the level, and those half way between two of them: one about which the plan is its own mirror image, if there is
 * any; of those, or of all, the one along or across which most of the wires lie; of equals the one nearest to north.
 */
export function principalBearing(pieces: readonly Piece[]): number {
  const level = pieces
    .map((p) => minus(p.to, p.from))
    .map((step) => ({ run: Math.hypot(step.x, step.y), bearing: Math.atan2(step.x, step.y) }));
  const longest = Math.max(...level.map((l) => l.run));
  const directions: number[] = [];
  const add = (list: number[], bearing: number) => {
    if (list.length < MOST && !list.some((b) => Math.abs(quarter(b - bearing)) < SAME)) list.push(bearing);
  };
  for (const { run, bearing } of level) if (run > 1e-6 * longest) add(directions, quarter(bearing));
  const candidates = [...directions];
  for (const a of directions)
    for (const b of directions)
      if (a < b) for (const between of [(a + b) / 2, (a + b) / 2 + QUARTER / 2]) add(candidates, quarter(between));
  // two wires at right angles are one direction here, yet they too have a middle
  for (const d of directions) add(candidates, quarter(d + QUARTER / 2));
  const worth = (candidate: number): readonly [number, number, number] => {
    const run = level.reduce((sum, l) => (Math.abs(quarter(l.bearing - candidate)) < SAME ? sum + l.run : sum), 0);
    const { symmetric } = pictureOf(orthogonalViews(candidate).plan, pieces);
    return [symmetric ? 1 : 0, Math.round((1e6 * run) / longest), -Math.round(Math.abs(candidate) * 1e9)];
  };
  const ranked = candidates
    .map((bearing) => ({ bearing, worth: worth(bearing) }))
    .sort((a, b) => b.worth[0] - a.worth[0] || b.worth[1] - a.worth[1] || b.worth[2] - a.worth[2]);
  const best = ranked[0]?.bearing ?? 0;
  return Math.abs(best) < 1e-9 ? 0 : best;
}
