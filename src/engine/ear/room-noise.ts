import { GivenError } from '../given-error.ts';
import { linear } from '../numeric/index.ts';
import { aWeightedLevel } from './a-weighting.ts';
import type { EarDescription } from './description.ts';
import { NC_OCTAVES, noiseCriterionLevels, roomCriterionLevel } from './noise-curves.ts';

/** One-third-octave bands in which a room's noise is summed [Hz]. */
export const ROOM_BANDS: readonly number[] = [
  25, 31.5, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150, 4000, 5000, 6300, 8000,
  10000,
];

/** An octave holds three thirds: 10 log10 3 [dB]. */
const OCTAVE_TO_THIRD = 10 * Math.log10(3);
/** Slope carried on outside the bands a person gives [dB per octave], that of the room criterion. */
const SLOPE = 5;
/** Ratio of neighbouring centre frequencies above which the bands are octaves: between 2^(1/3) and 2. */
const OCTAVE_SPACING = 1.6;
/** Levels that a room can have at all [dB]. */
const LEAST = -50;
const GREATEST = 140;
const NC_LOG = NC_OCTAVES.map(Math.log);
/** A-weighted level of the spectrum that has 0 dB in the third octave of 1 kHz and falls by 5 dB per octave [dB(A)]. */
const NEUTRAL = aWeightedLevel(
  ROOM_BANDS,
  ROOM_BANDS.map((f) => roomCriterionLevel(0, f)),
);

/**
 * One-third-octave band level of a room's noise [dB SPL], over frequency.
 *
 * Noise criterion: the octave levels less 10 log10 3, in straight lines against log f (each octave's sum is kept to about 0.5 dB).
 * A-weighted: a spectrum falling by 5 dB per octave, the room criterion's neutral shape, raised to the given level.
 * Bands: as given, octaves less 10 log10 3; carried on by 5 dB per octave outside, rising downwards.
 *
 * @throws GivenError if the room's levels are outside -50 to 140 dB, or fewer than two bands are given, or they do not ascend
 */
export function roomBandLevel(room: EarDescription['room']): (frequency: number) => number {
  switch (room.kind) {
    case 'noise-criterion': {
      inRange('ear.room.rating', room.rating, 'NC');
      const octaves = noiseCriterionLevels(room.rating);
      return (frequency) => linear(NC_LOG, octaves, Math.log(frequency)) - OCTAVE_TO_THIRD;
    }
    case 'a-weighted': {
      inRange('ear.room.level', room.level, 'dB(A)');
      const rating = room.level - NEUTRAL;
      return (frequency) => roomCriterionLevel(rating, frequency);
    }
    case 'bands':
      return givenBands(room.bands);
  }
}

function givenBands(bands: readonly { readonly frequency: number; readonly level: number }[]): (frequency: number) => number {
  if (bands.length < 2)
    throw new GivenError(
      'ear.room.bands',
      `${bands.length} band(s)`,
      'one band does not say whether it is an octave or a third of one',
      'Give at least two neighbouring bands, or an A-weighted level.',
    );
  bands.forEach((b, i) => {
    inRange(`ear.room.bands[${i}].level`, b.level, 'dB');
    const before = bands[i - 1]?.frequency ?? 0;
    if (!(b.frequency > before && b.frequency < Number.POSITIVE_INFINITY))
      throw new GivenError(
        `ear.room.bands[${i}].frequency`,
        `${b.frequency} Hz`,
        'centre frequencies are above zero and ascend',
        'List the bands from low to high.',
      );
  });
  const ratio = bands[1]!.frequency / bands[0]!.frequency;
  const share = ratio > OCTAVE_SPACING ? OCTAVE_TO_THIRD : 0;
  const x = bands.map((b) => Math.log(b.frequency));
  const y = bands.map((b) => b.level - share);
  const low = x[0]!;
  const high = x[x.length - 1]!;
  return (frequency) => {
    const at = Math.log(frequency);
    const beyond = at < low ? low - at : at > high ? high - at : 0;
    return linear(x, y, at) + (SLOPE / Math.LN2) * beyond;
  };
}

function inRange(path: string, value: number, unit: string): void {
  if (!(value >= LEAST && value <= GREATEST))
    throw new GivenError(
      path,
      `${value} ${unit}`,
      `no room is outside ${LEAST} to ${GREATEST} dB`,
      'A quiet living room has some 30 to 40 dB(A).',
    );
}

/** Level of one octave, the sum of its three thirds [dB SPL]. */
export function octaveLevel(thirdOctave: (frequency: number) => number, centre: number): number {
  let sum = 0;
  for (const shift of [-1, 0, 1]) sum += 10 ** (thirdOctave(centre * 2 ** (shift / 3)) / 10);
  return 10 * Math.log10(sum);
}
