import type { Element } from '../circuit/elements.ts';
import type { Complex } from '../numeric/index.ts';
import type { EarCoupling, Earpiece, PhonesDescription } from './description.ts';

/** The audio half: a network from node `output` (the detector's side) to node `earpiece`, both against earth, and what sound the earpiece makes of it. */
export interface PhonesModel {
  readonly description: PhonesDescription;
  /** linear network at audio frequencies, valid from 0 Hz up: the direct-current path is in it */
  readonly elements: readonly Element[];
  /** impedance of the earpiece alone [ohm] */
  earpieceImpedance(frequency: number): Complex;
  /** the same network in closed form: impedance seen by the detector's output [ohm], and voltage on the earpiece over that on the output [1] */
  load(frequency: number): Complex;
  transfer(frequency: number): Complex;
  /** sound pressure level [dB SPL] as the coupler reads it, for one volt rms across the earpiece */
  sensitivity(frequency: number): number;
  /** attenuation of room noise by the earpiece [dB], positive */
  attenuation(frequency: number): number;
  /** reference equivalent threshold [dB SPL] of a normal ear under this earpiece, on the same coupler */
  threshold(frequency: number): number;
  readonly coupling: EarCoupling;
  readonly coupler: Earpiece['coupler'];
  readonly ears: 1 | 2;
  readonly remarks: readonly string[];
}
