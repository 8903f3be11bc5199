/** What a detector is to a weak signal, without bias. */
export interface SmallSignal {
  /** [ohm] */
  readonly resistance: number;
  /** curvature over twice the slope [A/W], negative where the law rectifies backwards */
  readonly currentSensitivity: number;
}

/**
 * Open-circuit voltage sensitivity.
 *
 * gamma = beta R; 1/(2 Is) for an exponential junction
 *
 * @returns [V/W] of radio power into the law
 * Source: A. M. Cowley, H. O. Sorensen, IEEE Trans. MTT-14 (1966) 588.
 */
export function voltageSensitivity(weak: SmallSignal): number {
  return weak.currentSensitivity * weak.resistance;
}

/**
 * What junction capacitance and series resistance leave of the sensitivity when all else is tuned out.
 *
 * 1/(1 + w^2 C^2 Rs R)
 *
 * @param frequency - [Hz]
 * @param capacitance - C [F]
 * @param seriesResistance - Rs [ohm]
 * @param resistance - R, of the law at zero bias [ohm]
 * @returns power into the law over power in, 0 to 1
 * Holds for: w C Rs well below 1.
 * Source: A. Uhlir, BSTJ 37 (1958) 951; Cowley & Sorensen 1966.
 */
export function capacitanceLoss(frequency: number, capacitance: number, seriesResistance: number, resistance: number): number {
  const susceptance = 2 * Math.PI * frequency * capacitance;
  return 1 / (1 + susceptance * susceptance * seriesResistance * resistance);
}

/**
 * Radio power at which a matched detector leaves the square law: where what the square law would hand over as direct current equals all that comes in.
 *
 * (beta P)^2 R/4 = P at P = 4/(beta^2 R); 16 Is n Vt for an exponential junction
 *
 * @returns [W], or null where the law does not rectify at all
 * Source: derived; checked against B. H. Tongue's average of 15 junctions (about 12 dB above 3.2 nW).
 */
export function crossoverPower(weak: SmallSignal): number | null {
  const beta = weak.currentSensitivity;
  return beta === 0 ? null : 4 / (beta * beta * weak.resistance);
}
