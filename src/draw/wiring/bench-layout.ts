import { CircuitSheet } from '../circuit/sheet.ts';
import { corners } from '../plane/extent.ts';
import { add } from '../plane/vector.ts';
import type { Mark } from '../svg/mark.ts';
import type { BenchPart } from './bench-parts.ts';
import { GRID } from './footprint.ts';
import { goodPlacings } from './good-placings.ts';
import { LOOKS } from './lead.ts';
import { wiresOf } from './lead-length.ts';
import { markAt } from './mark-at.ts';
import { boardOf, GAP, laidPins, moved, type Placing, placedParts } from './placing.ts';
import { Router } from './router.ts';

/** Room is made wider until every wire finds its way, so many times. */
const WIDER = 8;

interface Wired {
  readonly marks: readonly Mark[];
  readonly crossings: number;
}

/** Layouts kept: a sheet is laid out anew for another paper, and in parts. */
const KEPT = 16;
const kept = new Map<string, readonly Mark[]>();

/** Parts where they lie and the wires between them; for the same parts worked out once. */
export function benchMarks(parts: readonly BenchPart[]): readonly Mark[] {
  const key = JSON.stringify(parts);
  const marks = kept.get(key) ?? laidOut(parts);
  kept.delete(key);
  kept.set(key, marks);
  if (kept.size > KEPT) kept.delete(kept.keys().next().value!);
  return marks;
}

function laidOut(parts: readonly BenchPart[]): readonly Mark[] {
  const placings = goodPlacings(parts);
  for (let i = 0; i <= WIDER; i++) {
    const found = placings.map((p) => wired(parts, p, GAP + i * GRID)).filter((w) => w !== null);
    const [best] = found.sort((a, b) => a.crossings - b.crossings);
    if (best) return best.marks;
  }
  throw new RangeError('A wire finds no way between the parts, however far apart they lie.');
}

function wired(parts: readonly BenchPart[], placing: Placing, gap: number): Wired | null {
  const placed = placedParts(parts, placing, gap);
  const pins = laidPins(placed);
  const board = boardOf(placed, gap);
  const blocks = placed.flatMap(({ footprint, at }) => footprint.blocks.map((b) => moved(b, at)));
  const router = new Router(board, blocks, pins);
  const sheet = new CircuitSheet();
  for (const { footprint, at } of placed) sheet.add(footprint.marks.map((m) => markAt(m, (v) => add(v, at))));
  for (const wire of wiresOf(pins)) {
    const way = router.lead(wire);
    if (!way) return null;
    sheet.wireAs({ ...LOOKS[wire.lead], labels: { lead: wire.lead } }, ...way);
  }
  const edge = corners(board);
  const rim: Mark = { kind: 'polyline', points: [...edge, edge[0]!], stroke: 'faint', width: 0.4, labels: { bench: 'board' } };
  return { marks: [rim, ...sheet.marks()], crossings: router.crossings };
}
