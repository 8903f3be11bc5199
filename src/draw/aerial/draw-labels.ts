import { TEXT_SIZE } from '../placing/dimension.ts';
import { placeLabel } from '../placing/label.ts';
import { add, distance, scale, subtract, unit, type Vector } from '../plane/vector.ts';
import type { Mark } from '../svg/mark.ts';
import { armOf, feedOf } from './content.ts';
import { turnsText } from './cutting-list.ts';
import { doesSomething, loadText } from './load-text.ts';
import { END_ON, type OnPaper } from './on-paper.ts';
import { FEED_CLEARANCE, feedMarks, LOAD_CLEARANCE, loadMarks } from './symbols.ts';

const LOOK = { size: TEXT_SIZE, fill: 'ink', clear: 1 } as const;

/** Loads, where they are and what they are. */
export function drawLoads(paper: OnPaper): readonly Mark[] {
  const { content, node, occupied } = paper;
  return content.layout.loads.flatMap(({ arm, load }) => {
    if (!doesSomething(load)) return [];
    const place = armOf(content, arm);
    const along = unit(subtract(node(place.beyond), node(place.node)));
    // one at a wire's end is drawn in that wire, clear of the joint
    const at = add(node(place.node), scale(along, place.sided ? 3 : 0));
    return [
      ...loadMarks(at, along),
      ...placeLabel(at, loadText(load), { ...LOOK, clear: LOAD_CLEARANCE, labels: { load: 'text' } }, occupied),
    ];
  });
}

/** Diameter and number of turns of what is wound. */
export function drawTurns({ content, point, occupied }: OnPaper): readonly Mark[] {
  return content.turns.flatMap((t) => {
    const upperRight = t.pieces.map((p) => point(p.from)).reduce((a, b) => (b.x - b.y > a.x - a.y ? b : a));
    return placeLabel(upperRight, turnsText(t), { ...LOOK, labels: { dimension: 'turns' } }, occupied);
  });
}

/** What the bodies are. */
export function drawBodies({ content, point, occupied }: OnPaper): readonly Mark[] {
  return content.bodies.flatMap((b) => {
    const ends = b.wires.flatMap((w) => [content.structure.wires[w]!.from, content.structure.wires[w]!.to]).map(point);
    const lowerRight = ends.reduce((a, c) => (c.x + c.y > a.x + a.y ? c : a));
    return placeLabel(lowerRight, b.label, { ...LOOK, labels: { body: 'text' } }, occupied);
  });
}

/** The feed's two terminals, each in the conductor it leads to; its name where `named`. */
export function drawFeed(paper: OnPaper, named: boolean): readonly Mark[] {
  const { content, node, occupied, thickness } = paper;
  const feed = feedOf(content);
  const at = node(feed.node);
  const direction = (n: number): Vector | null => (distance(at, node(n)) < END_ON ? null : unit(subtract(node(n), at)));
  const thick = thickness(content.structure.wires[feed.wire]!.diameter);
  const marks = feedMarks(at, direction(feed.beyond), feed.opposite === null ? null : direction(feed.opposite), thick);
  if (!named) return marks;
  return [...marks, ...placeLabel(at, 'feed', { ...LOOK, fill: 'accent', clear: FEED_CLEARANCE, labels: { feed: 'text' } }, occupied)];
}
