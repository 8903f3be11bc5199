import { TEXT_SIZE } from '../placing/dimension.ts';
import { placeLabel } from '../placing/label.ts';
import { Occupied, WEIGHT } from '../placing/occupied.ts';
import { type Vector, vector } from '../plane/vector.ts';
import type { Mark } from '../svg/mark.ts';
import { endAt, type Helix, helixOf, tube } from './helix.ts';
import { leadMarks, leadsOf } from './leads.ts';
import { dotMark } from './side-view.ts';
import { turnsCount } from './turns-words.ts';
import type { Wound } from './wound.ts';

const SIDES = 72;

/** The coil from its cold end: where its ends and its taps lie round the turn. */
export function endView(coil: Wound, perMetre: number): readonly Mark[] {
  const h = helixOf(coil, perMetre);
  const occupied = new Occupied();
  const ring = circlePoints(h);
  ring.forEach((p, i) => {
    if (i > 0) occupied.addLine(ring[i - 1]!, p, WEIGHT.conductor);
  });
  const leads = leadsOf(h, perMetre, 'end');
  for (const l of leads) occupied.addLine(l.from, l.to, WEIGHT.conductor);
  const name = (at: Vector, text: string, accent: boolean): readonly Mark[] =>
    placeLabel(at, text, { size: TEXT_SIZE, fill: accent ? 'accent' : 'ink', clear: 1, labels: { end: 'name' } }, occupied);
  const tips = leads.length > 0 ? leads.map((l) => l.to) : [endAt(h, 0), endAt(h, coil.turns)];
  const together = Math.abs(coil.turns - Math.round(coil.turns)) < 1e-6;
  return [
    ...tube(ring, h.wire, 'faint', 'ink', { part: 'ring' }),
    ...leads.flatMap((l) => leadMarks(l, h.wire, 'faint')),
    ...coil.taps.map((t) => dotMark(endAt(h, t.turns), true, h.wire)),
    ...(together ? name(tips[0]!, 'both ends', false) : [...name(tips[0]!, 'cold end', false), ...name(tips[1]!, 'hot end', false)]),
    ...coil.taps.flatMap((t) => name(endAt(h, t.turns), `tap ${turnsCount(t.turns)}`, true)),
  ];
}

const circlePoints = (h: Helix): readonly Vector[] =>
  Array.from({ length: SIDES + 1 }, (_, i) => {
    const angle = (2 * Math.PI * i) / SIDES;
    return vector(h.radius * Math.sin(angle), h.radius * Math.cos(angle));
  });
