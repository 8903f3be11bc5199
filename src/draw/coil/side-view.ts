import { DIAMETER, lengthText } from '../aerial/length-text.ts';
import { type Dimension, placeDimension, TEXT_SIZE } from '../placing/dimension.ts';
import { placeLabel } from '../placing/label.ts';
import { Occupied, WEIGHT } from '../placing/occupied.ts';
import { type Vector, vector } from '../plane/vector.ts';
import type { Mark } from '../svg/mark.ts';
import type { Role } from '../svg/palette.ts';
import { type Helix, helixMarks, helixOf, inFront, sideAt } from './helix.ts';
import { leadMarks, leadsOf } from './leads.ts';
import { turnsCount } from './turns-words.ts';
import { type Wound, windingLength } from './wound.ts';

/** The former reaches so far beyond the winding, in diameters. */
const BEYOND = 0.12;
/** A pitch drawn smaller than this is left to the text [mm]. */
const SMALLEST_PITCH = 1.2;
/** More turns than this are added up into rows for what is written around them, so far apart [mm]. */
const MOST_LINES = 40;
const ROW = 2.5;

/** Wires are told apart by their filling, not by colour. */
export const fillOf = (i: number): Role => (i === 0 ? 'faint' : 'paper');

export interface SideView {
  readonly marks: readonly Mark[];
  readonly thinned: boolean;
}

/** The windings from the side, with their dimensions. */
export function sideView(windings: readonly Wound[], perMetre: number): SideView {
  const helices = windings.map((w) => helixOf(w, perMetre));
  const occupied = new Occupied();
  const drawn = helices.map((h, i) => helixMarks(h, fillOf(i), { part: windings[i]!.name }));
  const leads = helices.map((h) => leadsOf(h, perMetre, 'side'));
  for (const h of helices) occupy(h, occupied);
  for (const l of leads.flat()) occupied.addLine(l.from, l.to, WEIGHT.conductor);
  const former = windings[0]!.former ? formerMarks(helices[0]!, occupied) : [];
  const leadsDrawn = (front: boolean) =>
    helices.flatMap((h, i) => leads[i]!.filter((l) => l.front === front).flatMap((l) => leadMarks(l, h.wire, fillOf(i))));
  const body: Mark[] = [
    ...leadsDrawn(false),
    ...drawn.flatMap((d) => d.back),
    ...former,
    ...drawn.flatMap((d) => d.front),
    ...leadsDrawn(true),
  ];
  const dimensions = dimensionsOf(helices).flatMap((d) => placeDimension(d, occupied).draw());
  return {
    marks: [...body, ...tapMarks(helices[0]!, occupied), ...dimensions, ...nameMarks(helices, occupied)],
    thinned: drawn.some((d) => d.thinned),
  };
}

/** What is written keeps clear of the wire. */
function occupy(h: Helix, occupied: Occupied): void {
  const { turns } = h.wound;
  if (turns <= MOST_LINES)
    for (let half = 0; half < 2 * turns; half++)
      occupied.addLine(sideAt(h, half / 2), sideAt(h, Math.min(turns, (half + 1) / 2)), WEIGHT.conductor);
  const [left, right] = [h.start, h.start + turns * h.pitch];
  const rows = Math.max(2, Math.ceil(h.radius / ROW));
  for (let i = -rows; i <= rows; i++) {
    const y = (h.radius * i) / rows;
    occupied.addLine(vector(left, y), vector(right, y), WEIGHT.conductor);
  }
}

function formerMarks(h: Helix, occupied: Occupied): readonly Mark[] {
  const inner = h.radius - h.wire / 2;
  const reach = Math.max(2, 2 * BEYOND * inner);
  const [left, right] = [h.start - reach, h.start + h.wound.turns * h.pitch + reach];
  const corners = [vector(left, -inner), vector(right, -inner), vector(right, inner), vector(left, inner)];
  corners.forEach((c, i) => {
    occupied.addLine(c, corners[(i + 1) % 4]!, WEIGHT.faint);
  });
  return [
    { kind: 'area', points: corners, fill: 'paper', labels: { part: 'former' } },
    { kind: 'polyline', points: [...corners, corners[0]!], stroke: 'quiet', width: 0.3 },
  ];
}

function dimensionsOf(helices: readonly Helix[]): readonly Dimension[] {
  const [coil, ...links] = helices as readonly [Helix, ...Helix[]];
  const highest = Math.max(...helices.map((h) => h.radius + h.wire / 2));
  const out: Dimension[] = [];
  const level = (from: number, to: number, y: number, text: string, up: boolean, name: string): void => {
    const edge = up ? -highest : highest;
    out.push({
      from: vector(from, y),
      to: vector(to, y),
      along: vector(1, 0),
      text,
      towards: vector(0, up ? -1 : 1),
      beyond: [vector(from, edge)],
      labels: { dimension: name },
    });
  };
  const w = coil.wound;
  if (w.turns >= 2 && coil.pitch >= SMALLEST_PITCH)
    level(coil.start + 0.5 * coil.pitch, coil.start + 1.5 * coil.pitch, -coil.radius, `pitch ${lengthText(w.pitch)}`, true, 'pitch');
  level(coil.start, coil.start + w.turns * coil.pitch, -coil.radius, `winding ${lengthText(windingLength(w))}`, true, 'length');
  for (const h of helices) {
    if (h !== coil && Math.abs(h.wound.innerDiameter - w.innerDiameter) < 1e-6) continue;
    const inner = h.radius - h.wire / 2;
    const x = h === coil ? h.start + h.wound.turns * h.pitch : h.start;
    out.push({
      from: vector(x, -inner),
      to: vector(x, inner),
      along: vector(0, 1),
      text: `${DIAMETER} ${lengthText(h.wound.innerDiameter)}`,
      towards: vector(h === coil ? 1 : -1, 0),
      beyond: [],
      labels: { dimension: 'inner-diameter' },
    });
  }
  for (const link of links) {
    const end = link.start + link.wound.turns * link.pitch;
    const gap = -link.wound.start - windingLength(link.wound);
    if (gap > 1e-6) level(end, coil.start, link.radius, `gap ${lengthText(gap)}`, false, 'gap');
  }
  return out;
}

const LOOK = { size: TEXT_SIZE, fill: 'ink', clear: 0.9 } as const;

/** Where something is soldered to a turn; a ring where that is behind. */
function tapMarks(coil: Helix, occupied: Occupied): readonly Mark[] {
  return coil.wound.taps.flatMap((t): readonly Mark[] => {
    const at = sideAt(coil, t.turns);
    const front = inFront(t.turns);
    const text = `tap ${turnsCount(t.turns)}${front ? '' : ', behind'}`;
    return [dotMark(at, front, coil.wire), ...placeLabel(at, text, { ...LOOK, fill: 'accent', labels: { tap: 'text' } }, occupied)];
  });
}

export const dotMark = (at: Vector, filled: boolean, wire: number): Mark => ({
  kind: 'circle',
  centre: at,
  radius: Math.max(0.8, Math.min(1.3, 0.45 * wire)),
  fill: filled ? 'accent' : 'paper',
  stroke: 'accent',
  width: 0.35,
  labels: { tap: 'dot' },
});

/** Which is which, where there are several. */
function nameMarks(helices: readonly Helix[], occupied: Occupied): readonly Mark[] {
  if (helices.length === 1) return [];
  return helices.flatMap((h, i) => {
    // the coil on its last turn in front, a link on its first, below the axis
    const turn = i === 0 ? Math.floor(h.wound.turns) - 0.125 : 0.875;
    return placeLabel(sideAt(h, turn), h.wound.name, { ...LOOK, labels: { winding: i } }, occupied);
  });
}
