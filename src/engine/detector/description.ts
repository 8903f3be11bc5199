/** What a person says about the detector. SI units. */

export type DetectorDescription = (
  | {
      /** exponential junction: i = saturationCurrent (exp(v / (ideality Vt)) - 1) */
      readonly kind: 'junction';
      readonly saturationCurrent: number;
      readonly ideality: number;
      readonly seriesResistance: number;
      /** at zero bias [F] */
      readonly junctionCapacitance: number;
      /** barrier for the change of saturation current with temperature [eV], and its exponent; absent: saturation current as given at any temperature */
      readonly energyGap?: number;
      readonly temperatureExponent?: number;
      /** temperature at which the saturation current holds [K] */
      readonly nominalTemperature: number;
    }
  | {
      /** field-effect channel between tank and output, gate driven by a share of the same RF */
      readonly kind: 'channel';
      readonly threshold: number;
      /** transconductance factor beta [A/V^2]: i = beta ((vgs - threshold) vds - vds^2/2) in the triode region */
      readonly transconductanceFactor: number;
      /** weak-inversion slope factor n */
      readonly slopeFactor: number;
      /** RF on the gate over RF on the drain, -1 to 1: 0 none, 1 gate tied to the same point */
      readonly gateDrive: number;
      /** steady gate voltage against the output side of the channel [V] */
      readonly gateBias: number;
      readonly gateCapacitance: number;
      readonly drainCapacitance: number;
      readonly seriesResistance: number;
    }
  | {
      /** measured: voltage [V] ascending, current [A] */
      readonly kind: 'table';
      readonly voltage: readonly number[];
      readonly current: readonly number[];
      readonly capacitance: number;
      /** resistance in series with the capacitance only; the table already holds it in the current [ohm] */
      readonly seriesResistance: number;
    }
) & {
  /** [K] */
  readonly temperature: number;
};
