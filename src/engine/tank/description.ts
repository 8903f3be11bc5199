/** What a person says about the tuned circuit. SI units, angles in radians. */

import type { Metal } from '../metals.ts';

export interface CoilGeometry {
  readonly kind: 'geometry';
  /** turns, in quarters: 5.5 */
  readonly turns: number;
  /** of the former or drill bit, that is inside the winding [m] */
  readonly innerDiameter: number;
  /** bare wire [m] */
  readonly wireDiameter: number;
  /** centre to centre of neighbouring turns [m] */
  readonly pitch: number;
  readonly metal: Metal;
  /** `bright` or how much rougher than smooth bright metal the surface is: RF resistance factor, 1 for bright, 1.3 tarnished (estimate) */
  readonly surfaceFactor: number;
  /** straight wire at each end up to the capacitor [m], two leads of this length */
  readonly leadLength: number;
  /** present if the coil sits on a former that stays in: its relative permittivity and loss tangent */
  readonly former?: { readonly permittivity: number; readonly lossTangent: number };
}

export type Coil =
  | CoilGeometry
  | {
      readonly kind: 'electrical';
      readonly inductance: number;
      /** unloaded Q of the coil at `frequency` [Hz]; resistance taken to grow with the square root of frequency */
      readonly q: number;
      readonly frequency: number;
      readonly selfCapacitance: number;
      /** turns, so that taps have a meaning; voltage divides as turns, winding halves fully coupled but for `tapCoupling` */
      readonly turns: number;
      readonly tapCoupling: number;
    };

export type CapacitorLaw =
  | { readonly kind: 'capacitance-linear' }
  | { readonly kind: 'wavelength-linear' }
  | { readonly kind: 'frequency-linear' }
  | { readonly kind: 'logarithmic' }
  /** measured: angle [rad] ascending, capacitance [F] */
  | { readonly kind: 'table'; readonly angle: readonly number[]; readonly capacitance: readonly number[] };

export interface VariableCapacitor {
  readonly minimum: number;
  readonly maximum: number;
  /** angle from minimum to maximum [rad] */
  readonly rotation: number;
  readonly law: CapacitorLaw;
  /** dielectric loss tangent */
  readonly lossTangent: number;
  /** plates, wiper and contact in series [ohm] */
  readonly contactResistance: number;
  /** its own leads and frame [H] */
  readonly leadInductance: number;
  /** fixed capacitor in series [F], to narrow the range; absent for none */
  readonly series?: number;
  /** fixed capacitor in parallel [F] */
  readonly parallel?: number;
}

/** How something is joined to the coil. Turns are counted from the earthed end. */
export type Coupling =
  /** across the whole coil */
  | { readonly kind: 'direct' }
  | { readonly kind: 'tap'; readonly turns: number }
  /** a separate winding on the same axis; gap [m] from its end to the earthed end of the coil, negative if it is pushed in */
  | {
      readonly kind: 'link';
      readonly turns: number;
      readonly innerDiameter: number;
      readonly wireDiameter: number;
      readonly pitch: number;
      readonly gap: number;
    }
  | { readonly kind: 'series-capacitor'; readonly capacitance: number };

export interface TankDescription {
  readonly coil: Coil;
  readonly capacitor: VariableCapacitor;
  /** wire between coil and capacitor, both ways together [m], and its diameter */
  readonly wiring: { readonly length: number; readonly diameter: number };
  /** joints in the circulating path, and the resistance of each at DC and RF alike [ohm]: bright solder 0.5 milliohm, dull or screwed 10 (estimates) */
  readonly joints: { readonly count: number; readonly resistance: number };
  /** everything else across the tank [F]: wiring, hand, detector holder */
  readonly strayCapacitance: number;
  /** absent where the coil is the aerial */
  readonly aerialCoupling?: Coupling;
  /** where the detector hangs; with a series capacitor, a return path for its direct current */
  readonly detectorCoupling: Coupling;
  /** resistance that returns the detector's direct current where the coupling blocks it [ohm] */
  readonly detectorReturn?: number;
}
