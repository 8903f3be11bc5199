import { beamStart } from '#engine';
import type { Stock } from '../stock.ts';
import { type AerialChoice, centimetres, ofWires, pieces, type Sight, thin } from './cutting.ts';

/** Number of elements, and booms from the first to the last [wavelengths]. */
const BEAMS = [
  { elements: 2, booms: [0.12, 0.2] },
  { elements: 3, booms: [0.3, 0.4] },
] as const;
/** Of the driven element [wavelengths]: below its resonance and at it; the tank takes what reactance is left. */
const DRIVEN = [0.44, 0.47];

/**
 * Beams of rods with two elements and with three, pointed at the mast.
 *
 * Reflector, director and their places are those that `beamStart` gives for the thickness of the rods, after P. P. Viezbicke, NBS Technical Note 688 (1976), table 1.
 * An element is one rod or two halves joined in the middle, all of one kind of rod.
 */
export function beams(stock: Stock, s: Sight): AerialChoice[] {
  return stock.rods.flatMap((rod) =>
    BEAMS.flatMap(({ elements, booms }) =>
      booms.flatMap((boom) => {
        const { lengths, places } = beamStart(boom, elements, rod.diameter / s.wavelength);
        const metres = (share: number): number => centimetres(share * s.wavelength);
        const [reflector, , ...directors] = lengths.map(metres);
        return DRIVEN.map(metres)
          .filter((driven) => thin(driven, rod.diameter))
          .filter((driven) => [reflector!, driven, ...directors].reduce((sum, l) => sum + pieces(rod, l), 0) <= rod.count)
          .map(
            (driven): AerialChoice => ({
              group: `beam of rods, ${s.upright ? 'upright, ' : ''}to ${s.degrees}`,
              description: ofWires(
                {
                  kind: 'beam',
                  reflector: { length: reflector!, behind: metres(-places[0]!) },
                  driven: { length: driven, element: { kind: 'straight' } },
                  directors: directors.map((length, k) => ({ length, ahead: metres(places[k + 2]!) })),
                  diameter: rod.diameter,
                  metal: rod.metal,
                  polarisation: s.upright ? 'vertical' : 'horizontal',
                  bearing: s.bearing,
                },
                s.height,
              ),
              wire: [],
            }),
          );
      }),
    ),
  );
}
