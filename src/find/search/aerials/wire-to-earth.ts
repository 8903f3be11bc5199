import type { Stock } from '../stock.ts';
import { type AerialChoice, hangs } from './cutting.ts';

/** Level parts of a wire to earth [m]. */
const LEVEL_WIRES = [5, 8, 12, 16, 20, 30, 40, 60];

/** Wires in the garden against an earth of their own. */
export function wiresToEarth({ garden, wires }: Stock): AerialChoice[] {
  if (!garden) return [];
  return wires.flatMap(({ part }, index) =>
    hangs(part)
      ? [...new Set([...LEVEL_WIRES.filter((l) => l < garden.length), garden.length])]
          .filter((l) => l + garden.height <= part.length)
          .map((horizontal) => ({
            group: 'wire to earth',
            description: {
              kind: 'wire-to-earth' as const,
              horizontal,
              vertical: garden.height,
              diameter: part.wireDiameter,
              earthResistance: garden.earthResistance,
            },
            wire: [{ index, length: horizontal + garden.height }],
          }))
      : [],
  );
}
