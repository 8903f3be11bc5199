import { SPEED_OF_LIGHT } from '../constants.ts';
import { METALS } from '../metals.ts';
import type { CoilGeometry } from './description.ts';
import { endlessCoil } from './endless-coil.ts';
import { fieldOfRow } from './proximity.ts';
import { radiusInSkinDepths, roundWireResistance } from './skin-effect.ts';
import { CLOSEST } from './turn-coupling.ts';

/** RF resistance of a winding without its leads. */
export interface WindingResistance {
  /** straightResistance times proximityFactor [ohm] */
  readonly resistance: number;
  /** of the same wire pulled straight [ohm] */
  readonly straightResistance: number;
  /** by which neighbouring turns, far sides and curvature raise it */
  readonly proximityFactor: number;
  readonly method: string;
  readonly source: string;
  readonly remarks: readonly string[];
}

/** turns up to which the whole coil is solved; longer ones get the middle of an endless coil put in between */
const WHOLE = 400;

/** least wire radius in skin depths for which the proximity of magnetic wire is computed: below it, that of this depth is an upper bound */
const MAGNETIC_DEPTHS = 10;

/**
 * RF resistance of a single-layer winding of round wire.
 *
 * R = R_straight phi,  phi = [(1 - f) n phi(n) + f (n + 1) phi(n + 1)] / N,  N = n + f
 *
 * phi(n) is the loss of n coaxial turns over that of straight wire, from their computed field. A coil of 5 1/2 turns has six wires in one half
 * of its sections and five in the other, hence the mean by angle.
 *
 * @param coil - turns, inner diameter, wire diameter and pitch [m], metal, surface factor; its leads are left to the caller
 * @param frequency - [Hz], >= 0
 * @returns resistances [ohm]
 * Holds for: solid wire, one layer, air outside; coil small against the wavelength; pitch at least 1.02 wire diameters (closer is computed as 1.02).
 * The loss of the field solution is within 0.8 % of that of exact rings for wires up to 0.15 of the turn's radius and 2.2 % up to 0.4.
 * Source: see `fieldOfRow` and `roundWireResistance`.
 */
export function windingResistance(coil: CoilGeometry, frequency: number): WindingResistance {
  const { turns, wireDiameter, pitch, metal, surfaceFactor } = coil;
  const meanDiameter = coil.innerDiameter + wireDiameter;
  const length = turns * Math.hypot(Math.PI * meanDiameter, pitch);
  const straightResistance = roundWireResistance(wireDiameter, length, metal, frequency, surfaceFactor);
  const depths = radiusInSkinDepths(wireDiameter, metal, frequency);
  const { proximityFactor, method } =
    depths > 0
      ? factor(coil, METALS[metal].permeability > 1 ? Math.max(depths, MAGNETIC_DEPTHS) : depths)
      : { proximityFactor: 1, method: 'direct current' };
  return {
    resistance: straightResistance * proximityFactor,
    straightResistance,
    proximityFactor,
    method,
    source:
      'skin effect: Bessel functions (Ramo, Whinnery & Van Duzer 4.5); proximity: multipoles of the wires (Rayleigh 1892, Butterworth 1922), ring fields (Maxwell art. 701)',
    remarks: remarks(coil, frequency, length, depths),
  };
}

function factor(coil: CoilGeometry, depths: number): { readonly proximityFactor: number; readonly method: string } {
  const { turns, wireDiameter, pitch } = coil;
  const wireOverPitch = wireDiameter / pitch;
  const { permeability } = METALS[coil.metal];
  let orders = 0;
  const loss = (count: number): number => {
    if (count === 0) return 0;
    const curvature = wireDiameter / (coil.innerDiameter + wireDiameter);
    const field = fieldOfRow({ count, wireOverPitch, curvature, radiusInSkinDepths: depths, permeability });
    orders = field.orders;
    return count * field.proximityFactor;
  };
  if (turns > WHOLE) {
    const middle = (turns - WHOLE) * endlessCoil(wireOverPitch, depths, permeability).proximityFactor;
    const proximityFactor = (loss(WHOLE) + middle) / turns;
    return { proximityFactor, method: `computed: ${WHOLE} coaxial turns, ${orders} cylindrical orders, and the middle of an endless coil` };
  }
  const whole = Math.floor(turns);
  const part = turns - whole;
  const total = (1 - part) * loss(whole) + (part > 0 ? part * loss(whole + 1) : 0);
  const count = part === 0 ? `${whole}` : `${whole} and ${whole + 1}`;
  return { proximityFactor: total / turns, method: `computed: field of ${count} coaxial turns, ${orders} cylindrical orders` };
}

function remarks(coil: CoilGeometry, frequency: number, length: number, depths: number): readonly string[] {
  const found: string[] = [];
  if (coil.turns >= 2 && coil.wireDiameter / coil.pitch > CLOSEST)
    found.push(`turns touch or nearly: computed as insulated, with a pitch of ${(1 / CLOSEST).toFixed(2)} wire diameters`);
  if (coil.wireDiameter > 0.4 * (coil.innerDiameter + coil.wireDiameter))
    found.push('wire thicker than 0.4 of the turn radius: resistance extrapolated, may be wrong by several per cent');
  if (coil.turns > WHOLE) found.push(`more than ${WHOLE} turns: the turns beyond are counted as the middle of an endless coil`);
  if (METALS[coil.metal].permeability > 1)
    found.push('permeability at radio frequency is an estimate within a factor of three; resistance goes as its square root');
  if (length > (0.125 * SPEED_OF_LIGHT) / frequency)
    found.push('wire longer than an eighth of the wavelength: current is not uniform along it, resistance counted as if it were');
  if (frequency < 3e6 && depths > 1) found.push('solid wire; stranded (litz) wire is not modelled');
  return found;
}
