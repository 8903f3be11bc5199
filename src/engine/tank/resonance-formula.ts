/**
 * Frequency at which an inductance and a capacitance alone resonate.
 *
 * f = 1 / (2 pi sqrt(L C))
 *
 * @param inductance - [H]
 * @param capacitance - [F]
 * @returns [Hz]
 * Source: Thomson, Phil. Mag. 5 (1853) 393.
 */
export function thomsonFrequency(inductance: number, capacitance: number): number {
  return 1 / (2 * Math.PI * Math.sqrt(inductance * capacitance));
}
