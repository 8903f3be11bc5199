import type { SetDescription } from '#engine';
import { type Vector, vector } from '../plane/vector.ts';
import { aerialMarks } from './aerial-symbol.ts';
import { channelMarks } from './channel-symbol.ts';
import { earpieceMarks } from './earpiece-symbol.ts';
import { feederMarks } from './feeder-symbol.ts';
import { labelMarks, type PartLabel, partLabel } from './label.ts';
import { type Joined, joinedAt, type Levels, levelsOf } from './levels.ts';
import { type CircuitPart, COMMON, type Netlist, netlistOf } from './netlist.ts';
import { gateLabel, type KnownValues } from './part-labels.ts';
import { CircuitSheet } from './sheet.ts';
import { frameMarks, HALF_WIDTH, type SymbolKind, symbolMarks } from './symbol.ts';

/** Air between a symbol and its label, and between a column and the next [mm]. */
const BESIDE = 1.6;
const AIR = 4;
/** Length of a part in a line, with its leads. */
const IN_LINE = 14;
/** From the coil's axis to that of a link beside it. */
const TO_LINK = 7;
const TAP_TEXT = 2.4;

type Labelled = Pick<CircuitPart, 'name' | 'label'>;

/** The circuit of a set, laid out from left to right: every part has a column of its own, so that nothing runs into anything. */
export class CircuitLayout {
  readonly sheet = new CircuitSheet();
  readonly #set: SetDescription;
  readonly #net: Netlist;
  readonly #aerial: Joined;
  readonly #detector: Joined;
  readonly #levels: Levels;
  /** right edge of what is drawn */
  #x = 0;
  /** ends of the lines that are still open to the right: where the next part joins */
  #line: Vector = vector(0, 0);
  #rail: Vector | null = null;

  constructor(set: SetDescription, known: KnownValues) {
    this.#set = set;
    this.#net = netlistOf(set, known);
    this.#aerial = joinedAt(set, 'aerial');
    this.#detector = joinedAt(set, 'detector');
    const { earpiece, transformer, tuning, coil } = this.#net;
    const shunts = [earpiece.label, ...(transformer ? [transformer.label] : [])];
    this.#levels = levelsOf(this.#aerial, this.#detector, shunts, tuning.length, coil.label);
    this.#drawAerial();
    this.#drawCoil();
    this.#drawCapacitor();
    this.#drawDetector();
    this.#drawAudio();
  }

  /** Joins the common line to a point on it, from the last one. */
  #ground(x: number): Vector {
    const at = vector(x, this.#levels.rail);
    if (this.#rail) this.sheet.wire(this.#rail, at);
    this.#rail = at;
    return at;
  }

  /** Goes on along the open line. */
  #along(x: number): Vector {
    const at = vector(x, this.#line.y);
    this.sheet.wire(this.#line, at);
    this.#line = at;
    return at;
  }

  /** A part from the open line down to the common one, its label on the right. */
  #shunt(kind: SymbolKind, { name, label }: Labelled): void {
    const x = this.#x + HALF_WIDTH[kind];
    const [a, b] = [this.#along(x), this.#ground(x)];
    this.sheet.add(symbolMarks(kind, name, a, b, -1));
    this.#beside(label, x + HALF_WIDTH[kind] + BESIDE, (a.y + b.y) / 2, name);
  }

  /** A label to the right of something; the column ends where it ends. */
  #beside(label: PartLabel, x: number, y: number, name: string): void {
    this.sheet.add(labelMarks(label, vector(x, y), 'right', name));
    this.#x = x + label.width + AIR;
  }

  /** A part in the open line, its label above; its first pin is on the left, or on the right, towards the tank. */
  #series(kind: SymbolKind, { name, label }: Labelled, first: 'left' | 'right' = 'left'): void {
    const width = Math.max(IN_LINE, label.width);
    const middle = this.#x + width / 2;
    const a = this.#along(middle - IN_LINE / 2);
    const b = vector(middle + IN_LINE / 2, a.y);
    this.sheet.add(first === 'left' ? symbolMarks(kind, name, a, b) : symbolMarks(kind, name, b, a));
    this.sheet.add(labelMarks(label, vector(middle, a.y - HALF_WIDTH[kind] - 1), 'above', name));
    this.#line = b;
    this.#x += width + AIR;
  }

  #drawAerial(): void {
    const { aerial, couplings, links } = this.#net;
    if (!aerial) return;
    const { aerial: y, rail } = this.#levels;
    const drawn = aerialMarks(aerial.plan, this.#x, y, rail);
    this.sheet.add(drawn.marks);
    this.#line = drawn.hot;
    this.#rail = drawn.cold;
    this.#x += drawn.width + AIR;
    if (aerial.feeder) {
      const box = feederMarks(aerial.feeder, this.#along(this.#x), this.#ground(this.#x));
      this.sheet.add(box.marks);
      this.#line = box.hot;
      this.#rail = box.cold;
      this.#x = box.hot.x + AIR;
    }
    if (couplings.aerial) this.#series('capacitor', couplings.aerial, 'right');
    const link = links.find((l) => l.name === 'aerial link');
    if (link) {
      const { label } = link;
      // its text on the left, for the coil stands close on the right
      const at = this.#x + label.width + BESIDE + HALF_WIDTH.winding;
      const [a, b] = [this.#along(at), this.#ground(at)];
      this.sheet.add(symbolMarks('winding', 'aerial link', a, b, -1));
      this.sheet.add(labelMarks(label, vector(at - HALF_WIDTH.winding - BESIDE, (a.y + b.y) / 2), 'left', 'aerial link'));
      this.#x = at + TO_LINK - HALF_WIDTH.winding;
    }
  }

  #drawCoil(): void {
    const { tank } = this.#set;
    const { rail, taps } = this.#levels;
    const aerialTap = this.#aerial.tap;
    if (aerialTap !== null) {
      const text = this.#tapLabel(aerialTap);
      this.sheet.add(labelMarks(text, vector(this.#x + text.width, taps.get(aerialTap)! + TAP_TEXT + 0.4), 'left', 'aerial tap'));
      this.#x += text.width + BESIDE;
    }
    const x = this.#x + HALF_WIDTH.winding;
    const coupling = this.#aerial.coupling;
    // the aerial's line ends at its tap or at the top; a link's has ended already
    if (coupling && coupling.kind !== 'link') this.#along(x);
    const bottom = this.#ground(x);
    const places = [{ turns: tank.coil.turns, y: 0 }, ...[...taps].map(([turns, y]) => ({ turns, y })), { turns: 0, y: rail }];
    for (let i = 0; i + 1 < places.length; i++) {
      const [upper, lower] = [places[i]!, places[i + 1]!];
      const name = taps.size === 0 ? 'coil' : `coil, ${lower.turns} to ${upper.turns} turns`;
      // turns on the right, towards what they drive; on the left where a link stands there
      this.sheet.add(symbolMarks('long-winding', name, vector(x, upper.y), vector(x, lower.y), coupling?.kind === 'link' ? 1 : -1));
    }
    if (this.#levels.capacitorAbove) this.sheet.add(frameMarks(bottom));
    this.#line = vector(x, 0);
    const { label } = this.#net.coil;
    const height = this.#levels.capacitorAbove ? this.#levels.detector : rail;
    const right = x + HALF_WIDTH.winding + BESIDE;
    this.sheet.add(labelMarks(label, vector(right, height / 2), 'right', 'coil'));
    this.#x = right + label.width + AIR;
    this.#drawDetectorLine(x);
  }

  #tapLabel(turns: number): PartLabel {
    return partLabel(this.#net.coil.taps.find((t) => t.turns === turns)!.text);
  }

  /** Where the detector leaves the coil below its top: from a tap, or by a link of its own. */
  #drawDetectorLine(coil: number): void {
    const { tap, coupling } = this.#detector;
    const y = this.#levels.detector;
    if (tap !== null) {
      const text = this.#tapLabel(tap);
      const at = vector(coil + HALF_WIDTH.winding + BESIDE, y + TAP_TEXT + 0.4);
      this.sheet.add(labelMarks(text, at, 'right', 'detector tap'));
      this.#x = Math.max(this.#x, at.x + text.width + AIR);
    }
    if (coupling?.kind === 'link') {
      const at = coil + TO_LINK;
      const { label } = this.#net.links.find((l) => l.name === 'detector link')!;
      const [a, b] = [vector(at, y), this.#ground(at)];
      this.sheet.add(symbolMarks('winding', 'detector link', a, b, 1));
      this.sheet.add(labelMarks(label, vector(at + HALF_WIDTH.winding + BESIDE, (a.y + b.y) / 2), 'right', 'detector link'));
      this.#x = Math.max(this.#x, at + HALF_WIDTH.winding + BESIDE + label.width + AIR);
    }
    this.#low = coupling?.kind === 'link' ? vector(coil + TO_LINK, y) : vector(coil, y);
  }
  /** where the detector's line begins when it is not the top of the coil */
  #low: Vector = vector(0, 0);

  #drawCapacitor(): void {
    const { tuning: stack, parallel } = this.#net;
    const { capacitorAbove, detector, rail } = this.#levels;
    const kind = 'variable-capacitor';
    const x = this.#x + HALF_WIDTH[kind];
    const top = this.#along(x);
    const bottomY = capacitorAbove ? detector - 8 : rail;
    const foot = (at: number): Vector => {
      if (!capacitorAbove) return this.#ground(at);
      this.sheet.add(frameMarks(vector(at, bottomY)));
      return vector(at, bottomY);
    };
    const bottom = foot(x);
    const step = (bottom.y - top.y) / stack.length;
    stack.forEach((s, i) => {
      const [a, b] = [vector(x, top.y + i * step), vector(x, top.y + (i + 1) * step)];
      this.sheet.add(symbolMarks(s.kind, s.name, a, b));
      this.sheet.add(labelMarks(s.label, vector(x + HALF_WIDTH[kind] + BESIDE, (a.y + b.y) / 2), 'right', s.name));
    });
    this.#x = x + HALF_WIDTH[kind] + BESIDE + Math.max(...stack.map((s) => s.label.width)) + AIR;
    if (parallel) {
      const at = this.#x + HALF_WIDTH.capacitor;
      const [a, b] = [this.#along(at), foot(at)];
      this.sheet.add(symbolMarks('capacitor', 'parallel capacitor', a, b));
      this.#beside(parallel.label, at + HALF_WIDTH.capacitor + BESIDE, (a.y + b.y) / 2, 'parallel capacitor');
    }
    if (capacitorAbove) this.#line = this.#low;
  }

  #drawDetector(): void {
    const { detector } = this.#set;
    const { couplings, detectorReturn, detector: part } = this.#net;
    if (couplings.detector) this.#series('capacitor', couplings.detector);
    if (detectorReturn) this.#shunt('resistor', detectorReturn);
    if (detector.kind !== 'channel') {
      this.#series(detector.kind === 'junction' ? 'diode' : 'measured-law', part);
      return;
    }
    const drawn = channelMarks(detector, part.label, gateLabel(detector), this.#x, this.#line.y);
    this.#along(drawn.a.x);
    this.sheet.add(drawn.marks);
    for (const w of drawn.wires) this.sheet.wire(...w);
    this.#line = drawn.b;
    this.#x += drawn.width + AIR;
  }

  #drawAudio(): void {
    const { output, transformer, earpiece } = this.#net;
    for (const part of output) {
      if (part.b === COMMON) this.#shunt(part.kind, part);
      else this.#series(part.kind, part);
    }
    if (transformer) this.#transformer(transformer.label);
    const x = this.#x + 3;
    const drawn = earpieceMarks(this.#along(x), this.#ground(x));
    this.sheet.add(drawn.marks);
    this.#beside(earpiece.label, x + drawn.halfWidth + BESIDE, (this.#line.y + this.#levels.rail) / 2, 'earpiece');
  }

  /** Two windings with a core between, the label above. */
  #transformer(label: PartLabel): void {
    const width = Math.max(12, label.width);
    const middle = this.#x + width / 2;
    const y = this.#line.y;
    const [left, right] = [middle - 4, middle + 4];
    const [a, b] = [this.#along(left), this.#ground(left)];
    this.sheet.add(symbolMarks('winding', 'primary', a, b, -1));
    const core = (a.y + b.y) / 2;
    const [c, d] = [vector(right, y), this.#ground(right)];
    this.sheet.add(symbolMarks('winding', 'secondary', c, d, 1));
    this.sheet.add(
      [-0.6, 0.6].map((off) => ({
        kind: 'line',
        from: vector(middle + off, core - 7),
        to: vector(middle + off, core + 7),
        stroke: 'ink',
        width: 0.5,
        labels: { core: 'line' },
      })),
    );
    this.sheet.add(labelMarks(label, vector(middle, y - 1.6), 'above', 'transformer'));
    this.#line = c;
    this.#x += width + AIR;
  }
}
