import { SPEED_OF_LIGHT } from '../constants.ts';
import { C, type Complex } from '../numeric/index.ts';
import { arrivalAxes, dot, type Vector } from './arrival.ts';
import type { AerialDescription } from './description.ts';
import type { Arrival } from './model.ts';

/** How a loop or coil stands. Axis level: it hears along the plane of its turns. Axis upright: it hears level fields from all round. */
export type LoopAxis = Extract<AerialDescription, { kind: 'loop' }>['axis'];

/**
 * Effective length of a small loop or coil for the two components of the field.
 *
 * V = jk N A (n x r) . E, with n the axis and r towards the mast: the flux of the wave's magnetic field through the turns.
 *
 * @param areaTurns - sum over turns of area [m^2]
 * @param frequency - [Hz]
 * @returns [m], in quadrature with the field; its greatest is 2 pi N A / lambda
 * Holds for wire much shorter than the wavelength, so that the current is the same all along.
 * Source: Balanis, Antenna Theory, 3rd ed., sec. 5.2; Terman, Radio Engineers' Handbook (1943) sec. 11.
 */
export function smallLoopEffectiveLength(
  areaTurns: number,
  frequency: number,
  axis: LoopAxis,
  arrival: Arrival,
): { readonly horizontal: Complex; readonly vertical: Complex } {
  const h = (2 * Math.PI * frequency * areaTurns) / SPEED_OF_LIGHT;
  const { toward, horizontal, vertical } = arrivalAxes(arrival);
  // signs of the axis: upright loops positive for a wave along `plane`, lying ones for a field to the right
  const n: Vector = axis.kind === 'vertical' ? [0, 0, -1] : [Math.cos(axis.plane), -Math.sin(axis.plane), 0];
  const across: Vector = [n[1] * toward[2] - n[2] * toward[1], n[2] * toward[0] - n[0] * toward[2], n[0] * toward[1] - n[1] * toward[0]];
  return { horizontal: C.complex(0, h * dot(across, horizontal)), vertical: C.complex(0, h * dot(across, vertical)) };
}
