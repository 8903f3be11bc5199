import type { Stock } from '../stock.ts';
import { type AerialChoice, centimetres, cutDown, ofWires, type Sight, thin, wireFor } from './cutting.ts';

/** All round, in wavelengths: small loops, and those about a whole wave. */
const SQUARE = [0.3, 0.5, 0.7, 0.9, 0.98, 1.06];
const ROUND = [0.25, 0.35, 0.5];
/** Straight pieces that stand for a circle. */
const SIDES = 16;
/** Length of each over its thickness, at least: the engine refuses two. */
const STOUT = 5;

/** A square loop of wire on spreaders, upright; a round one, bent of one rod. */
export function loops(stock: Stock, s: Sight): AerialChoice[] {
  return [...squares(stock, s), ...rounds(stock, s)];
}

function squares(stock: Stock, s: Sight): AerialChoice[] {
  return SQUARE.flatMap((k): AerialChoice[] => {
    const side = centimetres((k * s.wavelength) / 4);
    const wire = wireFor(stock, 4 * side);
    if (!wire || !thin(side, wire.part.wireDiameter)) return [];
    const { wireDiameter: diameter, metal } = wire.part;
    const shape = { kind: 'square-loop', side, diameter, metal, bearing: s.bearing, fedAt: s.upright ? 'side' : 'bottom' } as const;
    return [
      {
        group: `square loop of wire, ${s.upright ? 'fed at the side, ' : ''}broadside to ${s.degrees}`,
        description: ofWires(shape, s.height),
        wire: [{ index: wire.index, length: 4 * side }],
      },
    ];
  });
}

function rounds(stock: Stock, s: Sight): AerialChoice[] {
  const axis = s.upright ? ({ kind: 'horizontal', plane: s.bearing } as const) : ({ kind: 'vertical' } as const);
  return stock.rods.flatMap((rod) =>
    ROUND.map((k) => cutDown((k * s.wavelength) / Math.PI))
      .filter((diameter) => Math.PI * diameter <= rod.length && Math.PI * diameter > SIDES * STOUT * rod.diameter)
      .map((diameter) => ({
        group: s.upright ? `round loop of a rod, edge to ${s.degrees}` : 'round loop of a rod, flat',
        description: ofWires(
          { kind: 'round-loop', diameter, turns: 1, windingLength: 0, wireDiameter: rod.diameter, metal: rod.metal, sides: SIDES, axis },
          s.height,
        ),
        wire: [],
      })),
  );
}
