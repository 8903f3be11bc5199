/** What a person says about their aerial. SI units, angles in radians. */

import type { Metal } from '../metals.ts';
import type { Orientation } from './orientation.ts';
import type { WiresDescription } from './wires/description.ts';

export type { Orientation };

export type AerialDescription = (
  | {
      /** given by what it does, from a data sheet, a table or a measurement */
      readonly kind: 'electrical';
      /** terminal impedance [ohm] against frequency [Hz]; one point: constant; more: read between */
      readonly impedance: readonly { readonly frequency: number; readonly resistance: number; readonly reactance: number }[];
      /** one of the two: realised gain over isotropic [dB] towards `broadside`, or effective length [m] there */
      readonly gain?: number;
      readonly effectiveLength?: number;
      readonly orientation: Orientation;
      /** front-to-back ratio [dB], for stations behind; 0 for a two-sided pattern */
      readonly frontToBack: number;
    }
  | {
      /** straight, fed in the middle */
      readonly kind: 'dipole';
      /** tip to tip [m] */
      readonly length: number;
      readonly diameter: number;
      readonly metal: Metal;
      readonly orientation: Orientation;
    }
  | {
      /** a rod on the set, against whatever the set offers as the other half */
      readonly kind: 'whip';
      readonly length: number;
      readonly diameter: number;
      readonly metal: Metal;
      readonly counterpoise:
        | { readonly kind: 'plane' }
        | { readonly kind: 'drop-wire'; readonly length: number; readonly diameter: number }
        /** the set alone: its largest size [m] */
        | { readonly kind: 'set'; readonly size: number }
        /** a wire down to an earth rod [m] of wire; ohms of earth */
        | { readonly kind: 'earth-wire'; readonly length: number; readonly diameter: number; readonly earthResistance: number };
    }
  | {
      /** a small loop, its own winding not the tuning coil */
      readonly kind: 'loop';
      readonly diameter: number;
      readonly turns: number;
      readonly wireDiameter: number;
      /** axial length of the winding [m]; wire diameter where there is one turn */
      readonly windingLength: number;
      readonly metal: Metal;
      /** compass bearing in the plane of the loop [rad], axis horizontal; a loop standing upright hears along its plane */
      readonly axis: { readonly kind: 'horizontal'; readonly plane: number } | { readonly kind: 'vertical' };
    }
  | {
      /** a long wire against earth, for medium wave */
      readonly kind: 'wire-to-earth';
      /** level part [m] */
      readonly horizontal: number;
      /** rising part [m] */
      readonly vertical: number;
      readonly diameter: number;
      readonly earthResistance: number;
    }
  | {
      /** the tuning coil itself picks up the field; geometry is the tank's */
      readonly kind: 'coil';
      readonly axis: { readonly kind: 'horizontal'; readonly plane: number } | { readonly kind: 'vertical' };
    }
  /** computed from its wires, by the method of moments */
  | WiresDescription
) & { readonly feeder?: Feeder };

/** Transmission line between aerial and set. */
export interface Feeder {
  /** [m] */
  readonly length: number;
  /** characteristic impedance [ohm] */
  readonly impedance: number;
  readonly velocityFactor: number;
  /** matched loss [dB/m] at `lossFrequency` [Hz]; grows with the square root of frequency */
  readonly loss: number;
  readonly lossFrequency: number;
}
