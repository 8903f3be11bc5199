/** What a person says about everything after the detector up to the ear canal. SI units. */

export interface Transformer {
  /** primary turns over secondary turns; the detector is on the primary */
  readonly ratio: number;
  /** [H], primary, open secondary */
  readonly primaryInductance: number;
  /** winding resistances [ohm] */
  readonly primaryResistance: number;
  readonly secondaryResistance: number;
  /** leakage inductance seen from the primary [H] */
  readonly leakageInductance: number;
  /** core loss as a resistance across the primary [ohm] */
  readonly coreLoss: number;
  /** winding capacitance across the primary [F] */
  readonly capacitance: number;
}

/** Coupling of the transducer to the ear; decides which reference threshold and how much room noise gets in. */
export type EarCoupling = 'insert' | 'plug' | 'supra-aural' | 'circumaural' | 'open';

export type Earpiece = {
  readonly name: string;
  readonly coupling: EarCoupling;
  /**
   * Sound pressure level [dB SPL] against frequency [Hz ascending], for `sensitivityAt`: one volt rms across the earpiece, or one milliwatt
   * into its impedance at 1 kHz, as a coupler of `coupler` reads it.
   */
  readonly sensitivity: readonly { readonly frequency: number; readonly level: number }[];
  readonly sensitivityAt: '1 V' | '1 mW';
  readonly coupler: 'IEC 60318-1' | 'IEC 60318-4' | '6 cc';
  /** likely error of the sensitivity [dB], one standard deviation */
  readonly sensitivitySpread: number;
  /** how many ears it serves */
  readonly ears: 1 | 2;
} & (
  | { readonly kind: 'piezo'; readonly capacitance: number; readonly lossTangent: number; readonly leakResistance: number }
  | {
      readonly kind: 'magnetic';
      readonly resistance: number;
      readonly inductance: number;
      /** moving part seen from the terminals: parallel R [ohm], L [H], C [F], where known */
      readonly motional?: { readonly resistance: number; readonly inductance: number; readonly capacitance: number };
    }
);

export interface PhonesDescription {
  /** RF bypass across the detector's output [F] */
  readonly bypass: number;
  /** resistor across the output that gives the direct current a path [ohm]; absent where a transformer or magnetic phones do */
  readonly load?: number;
  /** inductor across the output instead of, or beside, the resistor */
  readonly choke?: { readonly inductance: number; readonly resistance: number };
  /** capacitor in series to the transformer or earpiece [F], which keeps direct current out of it */
  readonly blocking?: number;
  readonly transformer?: Transformer;
  readonly earpiece: Earpiece;
}
