/** What has to be put into an earpiece for a wanted sound pressure level. */
export interface Drive {
  /** [V rms] */
  readonly voltage: number;
  /** [A rms] */
  readonly current: number;
  /** [W], voltage times current: real power where the impedance is a resistance, apparent power otherwise */
  readonly power: number;
}

/**
 * Voltage, current and power for a sound pressure level: V = 10^((L - S)/20), I = V/Z, P = V^2/Z.
 *
 * @param level - wanted [dB SPL]
 * @param sensitivity - [dB SPL for 1 V rms]
 * @param impedance - magnitude [ohm]
 * Source: IEC 60268-7 definitions.
 */
export function driveForLevel(level: number, sensitivity: number, impedance: number): Drive {
  const voltage = 10 ** ((level - sensitivity) / 20);
  return { voltage, current: voltage / impedance, power: (voltage * voltage) / impedance };
}
