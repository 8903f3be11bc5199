import type { ReceivedField } from '#engine';
import { beams } from './aerials/beams.ts';
import { type AerialChoice, type Sight, sightOf } from './aerials/cutting.ts';
import { dipoles, foldedDipoles, hungAsV } from './aerials/dipoles.ts';
import { loops } from './aerials/loops.ts';
import { rods } from './aerials/rods.ts';
import { wiresToEarth } from './aerials/wire-to-earth.ts';
import type { Stock } from './stock.ts';

export type { AerialChoice };

const VHF = 30e6;
/** Stations that more than a plain dipole or rod is tried for, the strongest: each kind of aerial is a structure more in the race, and each length is solved for 5 to 20 ms. */
const SINGLED_OUT = 2;

/**
 * Aerials that can be made of the drawer for some stations: the coil alone (on a large former: a frame); dipoles, straight, as a V or folded; a rod with a drop wire or
 * radials; loops; beams; a wire to earth in the garden.
 *
 * Those for VHF are computed from their wires, and each description is one object, whose model is therefore solved once. Aerials of one group follow each other by length.
 *
 * @param stations - those to be heard, as they arrive
 * @param height - of the site [m]
 */
export function aerialChoices(stock: Stock, stations: readonly ReceivedField[], height: number): readonly AerialChoice[] {
  const out = new Map<string, AerialChoice>();
  const put = (choices: readonly AerialChoice[]): void => {
    for (const choice of choices) {
      const key = JSON.stringify(choice);
      if (!out.has(key)) out.set(key, choice);
    }
  };
  const strongest = [...stations].sort((a, b) => b.field - a.field).slice(0, SINGLED_OUT);
  for (const s of stations) put(coilAlone(sightOf(s, height)));
  for (const s of stations) {
    if (s.station.frequency < VHF) put(wiresToEarth(stock));
    else {
      const sight = sightOf(s, height);
      put([...dipoles(stock, sight), ...rods(stock, sight)]);
      if (strongest.includes(s)) put([foldedDipoles, hungAsV, loops, beams].flatMap((kind) => kind(stock, sight)));
    }
  }
  // those of one group together, in the order in which groups appear
  const all = [...out.values()];
  return [...new Set(all.map((c) => c.group))].flatMap((g) => all.filter((c) => c.group === g));
}

function coilAlone(s: Sight): AerialChoice[] {
  const axis = s.upright ? ({ kind: 'horizontal', plane: s.bearing } as const) : ({ kind: 'vertical' } as const);
  return [{ group: s.upright ? `coil, edge to ${s.degrees}` : 'coil, flat', description: { kind: 'coil', axis }, wire: [] }];
}
