import { GivenError, type WireStructure } from '#engine';
import { bends, type Turns } from './bends.ts';
import { type Conductors, conductors, type Piece } from './conductors.ts';
import { type Row, rowOf } from './row.ts';

/** Wires that stand for something that is not cut from stock: a metal case. */
export interface Body {
  readonly wires: readonly number[];
  /** what it is: `case 160 × 80 × 100 mm` */
  readonly label: string;
}

/** All that a drawing of a structure has to show, found once. */
export interface Content extends Conductors {
  readonly structure: WireStructure;
  readonly bodies: readonly Body[];
  /** all straight pieces, those of bodies too */
  readonly pieces: readonly Piece[];
  /** straight pieces to be cut, equal ones together, the longest first */
  readonly groups: readonly (readonly Piece[])[];
  readonly turns: readonly Turns[];
  readonly row: Row | null;
}

export function contentOf(structure: WireStructure, bodies: readonly Body[]): Content {
  const all = conductors(structure);
  bodies.forEach((b, i) => {
    if (b.wires.length === 0 || b.wires.some((w) => !structure.wires[w]))
      throw new GivenError(
        `options.bodies[${i}].wires`,
        b.wires.length === 0 ? 'empty' : b.wires.join(', '),
        `the wires are numbered 0 to ${structure.wires.length - 1}`,
        'Name those that stand for the body.',
      );
  });
  const inBody = bodyWires(bodies);
  const isBody = (p: Piece) => p.wires.every((w) => inBody.has(w));
  const cut = all.conductors.filter((c) => !c.pieces.every(isBody));
  const parts = cut.flatMap(bends);
  const groups = new Map<string, Piece[]>();
  for (const part of parts) {
    if (part.kind !== 'straight' || isBody(part.piece)) continue;
    const { length, diameter, metal } = part.piece;
    // equal to a hundredth of a millimetre is equal to a saw
    const key = `${Math.round(length * 1e5)}|${diameter}|${metal}`;
    groups.set(key, [...(groups.get(key) ?? []), part.piece]);
  }
  return {
    ...all,
    conductors: cut,
    structure,
    bodies,
    pieces: all.conductors.flatMap((c) => c.pieces),
    groups: [...groups.values()].sort((a, b) => b[0]!.length - a[0]!.length),
    turns: parts.filter((part) => part.kind === 'turns'),
    row: rowOf(all),
  };
}

export const bodyWires = (bodies: readonly Body[]): ReadonlySet<number> => new Set(bodies.flatMap((b) => b.wires));

/** A place in a wire where a part is inserted. */
export interface Insertion {
  readonly wire: number;
  readonly node: number;
  /** node at the other end of the span the part sits in */
  readonly beyond: number;
  /** node at the far end of the only other span that meets there; null where none or several do */
  readonly opposite: number | null;
  /** at the end of the wire, not within it */
  readonly sided: boolean;
}

export const feedOf = (content: Content): Insertion => armOf(content, content.layout.feed);

export function armOf({ layout }: Content, arm: { readonly span: number; readonly end: 0 | 1 }): Insertion {
  const span = layout.spans[arm.span]!;
  const [node, beyond] = arm.end === 0 ? [span.from, span.to] : [span.to, span.from];
  const others = layout.spans.filter((s) => s !== span && (s.from === node || s.to === node));
  const only = others.length === 1 ? others[0]! : null;
  return {
    wire: span.wire,
    node,
    beyond,
    opposite: only && (only.from === node ? only.to : only.from),
    sided: only?.wire !== span.wire,
  };
}
