import { MU0 } from '../constants.ts';
import { ellipticKE } from '../numeric/elliptic.ts';

/**
 * Nagaoka's coefficient: how much less a current sheet of finite length has than the same length of an endless one.
 *
 * K_L = 4 / (3 pi k') [(k'^2 / k^2) (K - E) + E - k],  k'^2 = 1 / (1 + x^2),  x = D / l
 *
 * @param shape - D / l, >= 0
 * Holds for: any shape. Below x = 1e-3 the closed form cancels and its series 1 - 4 x / (3 pi) + x^2 / 8 is used.
 * Source: Lorenz, Wied. Ann. 7 (1879) 161; Nagaoka, J. Coll. Sci. Tokyo 27 art. 6 (1909); Rosa & Grover, Sci. Paper 169 (1912).
 */
export function nagaokaCoefficient(shape: number): number {
  if (shape < 1e-3) return 1 - (4 * shape) / (3 * Math.PI) + (shape * shape) / 8;
  const complement = 1 / (1 + shape * shape);
  const parameter = shape * shape * complement;
  const { k, e } = ellipticKE(parameter, complement);
  return (
    ((4 / (3 * Math.PI * Math.sqrt(complement))) * (k - e) * complement) / parameter +
    (4 * (e - Math.sqrt(parameter))) / (3 * Math.PI * Math.sqrt(complement))
  );
}

/**
 * Inductance of a cylindrical current sheet.
 *
 * L = mu0 N^2 pi D^2 K_L / (4 l)
 *
 * @param turns - N
 * @param diameter - D, to the middle of the wire [m]
 * @param length - l = N p [m]
 * @returns [H]
 * Source: as `nagaokaCoefficient`.
 */
export function sheetInductance(turns: number, diameter: number, length: number): number {
  return (MU0 * turns * turns * Math.PI * diameter * diameter * nagaokaCoefficient(diameter / length)) / (4 * length);
}
