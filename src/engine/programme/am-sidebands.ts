/**
 * Share of an AM signal's power that is in its sidebands, for a sine of depth m: m^2/(2 + m^2).
 *
 * Source: textbook; the 11 % at m = 0.5 are printed in B. Bosch's analysis of the crystal set (1993).
 */
export const sidebandPowerShare = (depth: number): number => (depth * depth) / (2 + depth * depth);
