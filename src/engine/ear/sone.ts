/**
 * Loudness in sones from loudness level: N = 2^((LN - 40)/10) from 40 phon up; below, (LN/40)^(1/0.35) - 0.0005.
 *
 * @param loudnessLevel - [phon]
 * Source: ISO 532-1:2017 (the first branch is Stevens' law of ISO 131).
 */
export function sonesFromPhons(loudnessLevel: number): number {
  return loudnessLevel >= 40 ? 2 ** ((loudnessLevel - 40) / 10) : Math.max(0, (loudnessLevel / 40) ** (1 / 0.35) - 0.0005);
}

/** Loudness level [phon] from loudness [sone]: 40 + 10 log2 N from 1 sone up; below, 40 (N + 0.0005)^0.35, not below 3 phon. Source: as above. */
export function phonsFromSones(loudness: number): number {
  return loudness >= 1 ? 40 + 10 * Math.log2(loudness) : Math.max(3, 40 * (loudness + 0.0005) ** 0.35);
}
