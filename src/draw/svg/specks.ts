import type { Vector } from '../plane/vector.ts';
import { coordinate as round } from './element.ts';

/** Shapes that are told apart without their colour. */
export type Speck = 'dot' | 'diamond' | 'cross' | 'bar';

/**
 * Path through any number of specks of one shape, so that thousands are one element of a drawing: a dot is a stroke without length, round at its ends.
 *
 * @param radius - half of what a speck takes [mm]
 */
export function specksPath(shape: Speck, points: readonly Vector[], radius: number): string {
  const r = round(radius);
  const d = round(2 * radius);
  const from = (p: Vector, dx: number, dy: number): string => `M${round(p.x + dx)},${round(p.y + dy)}`;
  const speck = (p: Vector): string => {
    switch (shape) {
      case 'dot':
        return `${from(p, 0, 0)}h0`;
      case 'diamond':
        return `${from(p, 0, -radius)}l${r},${r}l-${r},${r}l-${r},-${r}z`;
      case 'cross':
        return `${from(p, -radius, -radius)}l${d},${d}m0,-${d}l-${d},${d}`;
      case 'bar':
        return `${from(p, -radius, 0)}h${d}`;
    }
  };
  return points.map(speck).join('');
}
