/**
 * Power gain of pre-emphasis: 1 + (2 pi f tau)^2, the admittance of a resistor and a capacitor in parallel.
 *
 * @param frequency - [Hz]
 * @param timeConstant - tau [s]: 50 us in most of the world, 75 us in the Americas and Korea; 0 for none
 * Holds up to 15 kHz. Source: Rec. ITU-R BS.450-3, sec. 1.2.
 */
export function preEmphasisPower(frequency: number, timeConstant: number): number {
  const wt = 2 * Math.PI * frequency * timeConstant;
  return 1 + wt * wt;
}

/** Gain of pre-emphasis [dB]: 10 log10(1 + (2 pi f tau)^2). Source: as above. */
export const preEmphasisGain = (frequency: number, timeConstant: number): number =>
  10 * Math.log10(preEmphasisPower(frequency, timeConstant));

/** Frequency where pre-emphasis reaches 3 dB [Hz]: 1/(2 pi tau). */
export const preEmphasisCorner = (timeConstant: number): number => 1 / (2 * Math.PI * timeConstant);
