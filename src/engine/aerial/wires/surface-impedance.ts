import { MU0 } from '../../constants.ts';
import { METALS } from '../../metals.ts';
import { besselJRatios, C, type Complex } from '../../numeric/index.ts';
import type { WireMetal } from './structure.ts';

/**
 * Internal impedance of a round wire by length, skin effect exact.
 *
 * Z' = rho/(pi a^2) (x/2) J0(x)/J1(x), x = (1 - j) a/depth.
 *
 * @param radius - [m]
 * @param frequency - [Hz]
 * @returns [ohm/m]; zero for `lossless`
 * Holds for: a wire whose surroundings are far compared with its thickness (no proximity effect); a tube counts as solid, which is right
 * when its wall is more than about three skin depths (20 um of copper at 100 MHz).
 * Source: Ramo, Whinnery & Van Duzer, Fields and Waves, sec. 4.5.
 */
export function internalImpedance(metal: WireMetal, radius: number, frequency: number): Complex {
  if (metal === 'lossless') return C.ZERO;
  const { resistivity, permeability } = METALS[metal];
  const x = radius / Math.sqrt(resistivity / (Math.PI * frequency * permeability * MU0));
  const { re, im } = besselJRatios(1, { re: x, im: -x });
  const direct = resistivity / (Math.PI * radius * radius);
  return C.scale(C.div({ re: x, im: -x }, { re: re[1]!, im: im[1]! }), direct / 2);
}
