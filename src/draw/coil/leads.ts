import { add, distance, scale, subtract, unit, type Vector, vector } from '../plane/vector.ts';
import type { Mark } from '../svg/mark.ts';
import type { Role } from '../svg/palette.ts';
import { endAt, type Helix, inFront, sideAt, tube } from './helix.ts';

/** A lead is drawn no longer than this, and so long where its length is not known [mm]. */
const LONGEST = 14;
const UNKNOWN = 8;
/** A lead that runs this nearly towards the reader is a dot. */
const END_ON = 0.15;

/** A lead on paper: radially away from the winding. */
export interface Lead {
  readonly from: Vector;
  readonly to: Vector;
  /** drawn shorter than it is */
  readonly broken: boolean;
  /** towards or away from the reader */
  readonly endOn: boolean;
  readonly front: boolean;
}

const ends = (h: Helix): readonly number[] => [0, h.wound.turns];

/** Both leads of a winding; none where it has none. */
export function leadsOf(h: Helix, perMetre: number, view: 'side' | 'end'): readonly Lead[] {
  const given = h.wound.leadLength === null ? UNKNOWN : h.wound.leadLength * perMetre;
  if (given <= 0) return [];
  const at = view === 'side' ? sideAt : endAt;
  return ends(h).map((turn) => {
    const from = at(h, turn);
    const drawn = Math.min(given, LONGEST);
    const to = at(h, turn, h.radius + drawn);
    return { from, to, broken: given > LONGEST, endOn: distance(from, to) < END_ON * drawn, front: inFront(turn) };
  });
}

export function leadMarks(lead: Lead, wire: number, fill: Role): readonly Mark[] {
  const labels = { part: 'lead' };
  if (lead.endOn) {
    const radius = Math.max(0.5, wire / 2);
    const ring: Mark = { kind: 'circle', centre: lead.from, radius, fill: 'paper', stroke: 'ink', width: 0.2, labels };
    // an arrow's point towards the reader, its feathers away
    const arm = scale(vector(1, 1), radius * 0.7);
    const cross = (v: Vector): Mark => ({ kind: 'line', from: subtract(lead.from, v), to: add(lead.from, v), stroke: 'ink', width: 0.15 });
    const dot: Mark = { kind: 'circle', centre: lead.from, radius: radius / 3, fill: 'ink', stroke: 'ink', width: 0.05 };
    return lead.front ? [ring, dot] : [ring, cross(arm), cross(vector(arm.x, -arm.y))];
  }
  return [...tube([lead.from, lead.to], wire, fill, 'ink', labels), ...(lead.broken ? breakMarks(lead, wire) : [])];
}

/** Two short strokes across: it goes on. */
function breakMarks(lead: Lead, wire: number): readonly Mark[] {
  const along = unit(subtract(lead.to, lead.from));
  const across = scale(add(scale(along, 0.5), vector(-along.y, along.x)), Math.max(1.2, 0.7 * wire));
  return [3, 4].map((before): Mark => {
    const at = subtract(lead.to, scale(along, before));
    return { kind: 'line', from: subtract(at, across), to: add(at, across), stroke: 'ink', width: 0.25 };
  });
}
