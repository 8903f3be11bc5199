import { MU0 } from '../constants.ts';
import { type Term, term, type Working } from '../figure.ts';
import { METALS, type Metal } from '../metals.ts';
import { besselJRatios } from '../numeric/index.ts';

/** Wires whose metal the description does not name. */
export const PLAIN_WIRE: Metal = 'copper';

/**
 * Series resistance of a straight round wire or rod for each metre, skin effect exact.
 *
 * R' = rho / (pi a^2) * Re{ (x/2) J0(x) / J1(x) }, x = (1 - j) a / depth, depth = sqrt(rho / (pi f mu))
 *
 * @param diameter - [m]
 * @returns [ohm/m]
 * Holds for a wire alone, current along it; a tube passes for a rod where its wall is several depths thick (20 um of copper at 100 MHz).
 * Source: Ramo, Whinnery & Van Duzer, Fields and Waves, sec. 4.5; table in Terman, Radio Engineers' Handbook (1943) sec. 2.
 */
export function straightWireResistance(metal: Metal, diameter: number, frequency: number): number {
  const { resistivity, permeability } = METALS[metal];
  const radius = diameter / 2;
  const x = radius / Math.sqrt(resistivity / (Math.PI * frequency * permeability * MU0));
  const { re, im } = besselJRatios(1, { re: x, im: -x });
  // (1 - j) / (J1/J0) has the real part (r - m) / |J1/J0|^2
  const ratio = (x * (re[1]! - im[1]!)) / (2 * (re[1]! ** 2 + im[1]! ** 2));
  return (resistivity * ratio) / (Math.PI * radius * radius);
}

/** How the resistance of the metal came about, for the figures. */
export const metalLossWorking = (terms: readonly Term[], metal: Metal, diameter: number, frequency: number): Working => ({
  formula: "R_l = R' * integral of |I(z)/I(0)|^2 dz",
  terms: [term("R'", `resistance of the ${metal} with skin effect`, straightWireResistance(metal, diameter, frequency), 'ohm/m'), ...terms],
  source: 'Ramo, Whinnery & Van Duzer, Fields and Waves, sec. 4.5; current as in the effective length',
});
