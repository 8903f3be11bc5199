import { bends, type Straight, type Turns } from './bends.ts';
import type { Conductor } from './conductors.ts';
import { countedText, DIAMETER, lengthText, trimmed } from './length-text.ts';

/** One line of what to cut: equal conductors together. */
export interface Cut {
  readonly count: number;
  /** of stock, for each [m] */
  readonly length: number;
  readonly diameter: number;
  readonly metal: string;
  /** how it is bent; empty where it is straight */
  readonly shape: string;
}

/** Conductors to cut, the longest first; equal ones are one line. */
export function cuttingList(conductors: readonly Conductor[]): readonly Cut[] {
  const lines = new Map<string, Cut>();
  for (const c of conductors) {
    const parts = bends(c);
    const length = parts.reduce((sum, part) => sum + part.length, 0);
    const { diameter, metal } = c.pieces[0]!;
    const shape = shapeText(parts, c.closed);
    const key = [lengthText(length), diameter, metal, shape].join('|');
    const before = lines.get(key);
    lines.set(key, { count: (before?.count ?? 0) + 1, length, diameter, metal, shape });
  }
  return [...lines.values()].sort((a, b) => b.length - a.length);
}

/** A line of the list as text: `2 × 720 mm, Ø 6 mm copper`. */
export function cutText(c: Cut): string {
  const metal = c.metal === 'lossless' ? '' : ` ${c.metal}`;
  return `${countedText(c.count, lengthText(c.length))}, ${DIAMETER} ${lengthText(c.diameter)}${metal}${c.shape === '' ? '' : `: ${c.shape}`}`;
}

export function turnsText(t: Turns): string {
  const count = `${trimmed(t.turns, 2)} ${Math.abs(t.turns - 1) < 0.005 ? 'turn' : 'turns'}`;
  const pitch = Math.abs(t.pitch) < 1e-9 ? '' : `, ${lengthText(Math.abs(t.pitch))} from turn to turn`;
  return `${count} ${DIAMETER} ${lengthText(t.diameter)}${pitch}`;
}

function shapeText(parts: readonly (Straight | Turns)[], closed: boolean): string {
  if (parts.length === 1 && parts[0]!.kind === 'straight') return '';
  const text = parts.map((part) => (part.kind === 'turns' ? turnsText(part) : lengthText(part.length))).join(' + ');
  return `bent ${text}${closed ? ', ends joined' : ''}`;
}
