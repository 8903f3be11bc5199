import type { SetDescription } from '#engine';
import { type PartLabel, partLabel } from '../circuit/label.ts';
import { COMMON, type Netlist } from '../circuit/netlist.ts';
import { spread } from '../placing/spread.ts';
import { type Vector, vector } from '../plane/vector.ts';
import type { Mark } from '../svg/mark.ts';
import { type Footprint, footprint, GRID, type Picture, type Pin, type Turn, turnedPicture } from './footprint.ts';
import { rectangle } from './pictograms.ts';

/** Of the winding, and of the former inside it [mm]. */
const RADIUS = 7;
const INSIDE = 6.2;
/** From the axis to the ends of the leads. */
const REACH = 12;
/** A winding of more turns is drawn with so many. */
const MOST_TURNS = 14;
/** Turns of a coil that is given by its values, whose number is not known. */
const NOMINAL = 8;
const TURN = 3;
const LEAST = 18;
const LINK_LEAST = 6;
const LINK_MOST_TURNS = 4;
const WIRE = { stroke: 'ink', width: 0.7 } as const;
/** Between two words, and from the former up to the first of them. */
const APART = 3;
const ABOVE = 3.4;

/** Whether a coil has more turns than are drawn. */
export const fewerTurns = (coil: SetDescription['tank']['coil']): boolean => coil.turns > MOST_TURNS;

interface Winding {
  readonly left: number;
  readonly length: number;
  readonly turns: number;
  /** as many as are drawn */
  readonly drawn: number;
}

/** Along the axis, and across it: down at whole turns, up at half ones; on the way up the wire is in front. */
const place = (w: Winding, turns: number): Vector =>
  vector(w.left + (w.length * turns) / w.turns, RADIUS * Math.cos((2 * Math.PI * turns * w.drawn) / w.turns));
const STEPS = 16;

function coilWinding(turns: number, drawn: number): Winding {
  return { left: 0, length: Math.max(LEAST, GRID * Math.round((drawn * TURN) / GRID)), turns, drawn };
}

/** The wire where it can be seen. */
function wireMarks(w: Winding): readonly Mark[] {
  return Array.from({ length: Math.ceil(w.drawn - 1e-9) }, (_, k): Mark => {
    const [from, to] = [k, Math.min(k + 0.5, w.drawn)].map((t) => (t * w.turns) / w.drawn) as [number, number];
    const points = Array.from({ length: STEPS + 1 }, (_, i) => place(w, from + ((to - from) * i) / STEPS));
    return { kind: 'polyline', points, ...WIRE };
  });
}

/** An end of the wire, its lead straight down. */
function endPin(w: Winding, turns: number): Pick<Pin, 'at' | 'from'> {
  const from = place(w, turns);
  return { at: vector(from.x, REACH), from };
}

/** Taps keep their order along the coil and stand apart from one another and from its ends. */
function tapPins({ coil }: Netlist, w: Winding): readonly Pin[] {
  const steps = w.length / GRID;
  const taps = [...coil.taps].reverse();
  let last = 0;
  return taps.map((t, i) => {
    const from = place(w, t.turns);
    const wanted = Math.round((from.x - w.left) / GRID);
    last = Math.max(last + 1, Math.min(wanted, steps - (taps.length - i)));
    const lead = t.roles.includes('detector') ? 'detector' : 'aerial';
    return { part: 'coil', pin: `tap ${t.turns}`, net: t.net, lead, from, at: vector(w.left + GRID * last, REACH) };
  });
}

interface Words {
  readonly at: number;
  readonly label: PartLabel;
  readonly names: string;
  /** a turn that a thin line leads to */
  readonly turn: Vector | null;
}

/** The coil on its former with its links beyond its cold end, cold end on the left; all leads go down, words stand above. */
export class BenchCoil {
  readonly #picture: Picture;
  readonly #words: readonly Words[];

  constructor(net: Netlist, coil: SetDescription['tank']['coil']) {
    const drawn = coil.kind === 'geometry' || coil.turns >= 2 ? Math.min(coil.turns, MOST_TURNS) : NOMINAL;
    const winding = coilWinding(coil.turns, drawn);
    const pins: Pin[] = [
      { ...endPin(winding, 0), part: 'coil', pin: 'b', net: COMMON, lead: 'tank' },
      ...tapPins(net, winding),
      { ...endPin(winding, coil.turns), part: 'coil', pin: 'a', net: net.coil.a, lead: 'tank' },
    ];
    const marks = [...wireMarks(winding)];
    const words: Words[] = [
      ...net.coil.taps.map((t) => ({
        at: place(winding, t.turns).x,
        label: partLabel(t.text),
        names: t.roles.map((r) => `${r} tap`).join(' '),
        turn: place(winding, t.turns),
      })),
    ];
    let left = 0;
    for (const link of [...net.links].reverse()) {
      const { turns } = link;
      const length = Math.max(LINK_LEAST, 2 * GRID * Math.ceil(Math.min(turns, LINK_MOST_TURNS) / 2));
      left -= length + Math.max(GRID * 2, GRID * Math.ceil((link.label.width + APART - length) / GRID));
      const w: Winding = { left, length, turns, drawn: Math.min(turns, LINK_MOST_TURNS) };
      marks.push(...wireMarks(w));
      const part = link.name;
      const lead = part === 'aerial link' ? 'aerial' : 'detector';
      pins.push({ ...endPin(w, 0), part, pin: 'a', net: link.a, lead }, { ...endPin(w, turns), part, pin: 'b', net: link.b, lead });
      words.push({ at: left + length / 2, label: link.label, names: part, turn: null });
    }
    const [start, end] = [left - 4, winding.length + 4];
    const middle = GRID * Math.round((start + end) / 2 / GRID);
    const shift = (p: Vector): Vector => vector(p.x - middle, p.y);
    const former: readonly Mark[] = [
      { kind: 'area', points: rectangle(start, -INSIDE, end, INSIDE), fill: 'paper' },
      { kind: 'polyline', points: [...rectangle(start, -INSIDE, end, INSIDE), vector(start, -INSIDE)], stroke: 'quiet', width: 0.3 },
    ];
    this.#picture = turnedPicture(
      { name: 'coil', marks: [...former, ...marks], pins, body: { left: start, right: end, top: -RADIUS, bottom: RADIUS } },
      shift,
    );
    this.#words = [{ at: winding.length / 2, label: net.coil.label, names: 'coil', turn: null }, ...words].map((w) => ({
      ...w,
      at: w.at - middle,
      turn: w.turn && shift(w.turn),
    }));
  }

  /** Lying one way; words keep upright. */
  footprint(turn: Turn): Footprint {
    const picture = turnedPicture(this.#picture, turn);
    // leads go down, or up where it is turned over
    const up = picture.pins[0]!.at.y > 0;
    const side = up ? 'above' : 'below';
    const edge = (y: number): number => (up ? -RADIUS - y : RADIUS + y);
    const [own, ...beside] = this.#words.map((w) => ({ ...w, at: turn(vector(w.at, 0)).x, turn: w.turn && turn(w.turn) }));
    const row = spread(
      beside.map((w) => ({ at: w.at, size: w.label.width + APART })),
      -1e3,
      1e3,
    );
    const tallest = Math.max(0, ...beside.map((w) => w.label.height));
    const words = beside.map((w, i) => ({ label: w.label, at: vector(row[i]!, edge(ABOVE)), side, names: w.names }) as const);
    const pointers = beside.flatMap((w, i): readonly Mark[] =>
      w.turn === null
        ? []
        : [
            { kind: 'line', from: w.turn, to: vector(row[i]!, edge(ABOVE - 0.6)), stroke: 'quiet', width: 0.15, labels: { tap: 'line' } },
            { kind: 'circle', centre: w.turn, radius: 0.9, fill: 'accent', stroke: 'accent', width: 0.2, labels: { tap: 'dot' } },
          ],
    );
    const ownAt = vector(own!.at, edge(beside.length === 0 ? 2 : ABOVE + tallest + 1.4));
    return footprint({ ...picture, marks: [...picture.marks, ...pointers] }, [
      { label: own!.label, at: ownAt, side, names: 'coil' },
      ...words,
    ]);
  }
}
