import type { Element, Node } from '../circuit/elements.ts';

/** A two-terminal part that may turn out to be nothing (no length, no resistance). */
export type Part = { readonly kind: 'resistor' | 'inductor'; readonly name: string; readonly value: number };

/** Below ten microohms or a femtohenry there is nothing: a node for it would only cost digits of the solution. */
const NOTHING = { resistor: 1e-5, inductor: 1e-15 } as const;

/**
 * Strings parts in series from a node, leaving out those that amount to nothing, so that no needless node is solved for.
 *
 * @returns the elements, and the node where the next thing joins
 */
export function seriesPath(from: Node, parts: readonly Part[]): { readonly elements: Element[]; readonly end: Node } {
  const elements: Element[] = [];
  let end = from;
  for (const { kind, name, value } of parts) {
    if (value < NOTHING[kind]) continue;
    const next = `after ${name}`;
    elements.push(
      kind === 'resistor'
        ? { kind, name, a: end, b: next, resistance: value }
        : { kind: 'windings', name, windings: [{ name, a: end, b: next }], inductance: [[value]] },
    );
    end = next;
  }
  return { elements, end };
}

/** A capacitor, and its loss at one angular frequency w [rad/s] as a resistor across it: 1 / (w C tan). */
export function lossyCapacitor(
  name: string,
  lossName: string,
  a: Node,
  b: Node,
  capacitance: number,
  lossTangent: number,
  w: number,
): Element[] {
  if (capacitance === 0) return [];
  const elements: Element[] = [{ kind: 'capacitor', name, a, b, capacitance }];
  if (lossTangent > 0) elements.push({ kind: 'resistor', name: lossName, a, b, resistance: 1 / (w * capacitance * lossTangent) });
  return elements;
}
