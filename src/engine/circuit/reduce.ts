import { EARTH, type Element, type Node } from './elements.ts';

type Windings = Extract<Element, { kind: 'windings' }>;
type Resistor = Extract<Element, { kind: 'resistor' }>;

/**
 * The same network with fewer nodes: what stands in series without anything joined between is drawn together.
 *
 * Resistors in series become one, a resistor in series with a winding becomes that winding's own, and single windings in series add up. Every
 * solve then costs less, and nothing changes at the nodes that are kept; the power in single parts can no longer be told, so
 * budgets are made from the full network.
 *
 * @param keep - nodes that must remain
 */
export function drawTogether(elements: readonly Element[], keep: readonly Node[]): Element[] {
  const kept = new Set<Node>([EARTH, ...keep]);
  const out = [...elements];
  while (drawOnce(out, kept)) {
    // each pass takes one node away
  }
  return out;
}

function drawOnce(out: Element[], kept: ReadonlySet<Node>): boolean {
  for (const [node, at] of meetings(out))
    if (!kept.has(node) && at.length === 2 && at[0] !== at[1] && mergeAt(node, out, at[0]!, at[1]!)) return true;
  return false;
}

/** Indices of the elements at each node, one for each terminal. */
function meetings(elements: readonly Element[]): Map<Node, number[]> {
  const met = new Map<Node, number[]>();
  const note = (node: Node, i: number): void => {
    const list = met.get(node);
    if (list) list.push(i);
    else met.set(node, [i]);
  };
  elements.forEach((e, i) => {
    if (e.kind === 'windings')
      for (const w of e.windings) {
        note(w.a, i);
        note(w.b, i);
      }
    else {
      note(e.a, i);
      note(e.b, i);
    }
  });
  return met;
}

function mergeAt(node: Node, out: Element[], i: number, k: number): boolean {
  const p = out[i]!;
  const q = out[k]!;
  const merged =
    p.kind === 'resistor' && q.kind === 'resistor'
      ? { ...p, a: farEnd(p, node), b: farEnd(q, node), resistance: p.resistance + q.resistance }
      : p.kind === 'resistor' && q.kind === 'windings'
        ? absorb(q, p, node)
        : p.kind === 'windings' && q.kind === 'resistor'
          ? absorb(p, q, node)
          : p.kind === 'windings' && q.kind === 'windings' && p.windings.length === 1 && q.windings.length === 1
            ? join(p, q, node)
            : null;
  if (merged === null) return false;
  out[i] = merged;
  out.splice(k, 1);
  return true;
}

const farEnd = (e: { readonly a: Node; readonly b: Node }, node: Node): Node => (e.a === node ? e.b : e.a);

/** A winding that takes the resistor beside it into itself; its dot stays where it was. */
function absorb(w: Windings, r: Resistor, node: Node): Windings {
  const far = farEnd(r, node);
  return {
    ...w,
    windings: w.windings.map((x) =>
      x.a === node || x.b === node
        ? { ...x, a: x.a === node ? far : x.a, b: x.b === node ? far : x.b, resistance: (x.resistance ?? 0) + r.resistance }
        : x,
    ),
  };
}

function join(p: Windings, q: Windings, node: Node): Windings {
  const [x] = p.windings;
  const [y] = q.windings;
  return {
    ...p,
    windings: [{ name: x!.name, a: farEnd(x!, node), b: farEnd(y!, node), resistance: (x!.resistance ?? 0) + (y!.resistance ?? 0) }],
    inductance: [[p.inductance[0]![0]! + q.inductance[0]![0]!]],
  };
}
