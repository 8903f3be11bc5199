import { GivenError } from '../given-error.ts';
import { interval, linear } from '../numeric/index.ts';
import { aWeightedLevel } from './a-weighting.ts';
import type { EarDescription } from './description.ts';
import { NC_OCTAVES, noiseCriterionLevels, roomCriterionLevel } from './noise-curves.ts';

/** One-third-octave bands in which a room's noise is summed [Hz]. */
export const ROOM_BANDS: readonly number[] = [
  25, 31.5, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150, 4000, 5000, 6300, 8000,
  10000,
];

/** Slope carried on outside the bands that are known [dB per octave], that of the room criterion. */
const SLOPE = 5;
/** Ratio of neighbouring centre frequencies above which the bands are octaves: between 2^(1/3) and 2. */
const OCTAVE_SPACING = 1.6;
/** Levels that a room can have at all [dB]. */
const LEAST = -50;
const GREATEST = 140;
/** A-weighted level of the spectrum that has 0 dB in the third octave of 1 kHz and falls by 5 dB per octave [dB(A)]. */
const NEUTRAL = aWeightedLevel(
  ROOM_BANDS,
  ROOM_BANDS.map((f) => roomCriterionLevel(0, f)),
);

/**
 * One-third-octave band level of a room's noise [dB SPL], over frequency.
 *
 * Noise criterion: the octaves of the curve, shared among their thirds. A-weighted: a spectrum falling by 5 dB per octave, the
 * room criterion's neutral shape, raised to the given level. Bands: thirds as given, octaves shared among their thirds. What lies outside the
 * bands is carried on by 5 dB per octave, rising downwards.
 *
 * @throws GivenError if the room's levels are outside -50 to 140 dB, or fewer than two bands are given, or they do not ascend
 */
export function roomBandLevel(room: EarDescription['room']): (frequency: number) => number {
  switch (room.kind) {
    case 'noise-criterion':
      inRange('ear.room.rating', room.rating, 'NC');
      return thirdsOfOctaves(NC_OCTAVES, noiseCriterionLevels(room.rating));
    case 'a-weighted': {
      inRange('ear.room.level', room.level, 'dB(A)');
      const rating = room.level - NEUTRAL;
      return (frequency) => roomCriterionLevel(rating, frequency);
    }
    case 'bands': {
      checkBands(room.bands);
      const frequency = room.bands.map((b) => b.frequency);
      const level = room.bands.map((b) => b.level);
      return frequency[1]! / frequency[0]! > OCTAVE_SPACING ? thirdsOfOctaves(frequency, level) : carriedOn(frequency.map(Math.log), level);
    }
  }
}

/** Levels in straight lines against log f, carried on outside by the usual slope. */
function carriedOn(x: ArrayLike<number>, y: ArrayLike<number>): (frequency: number) => number {
  const low = x[0]!;
  const high = x[x.length - 1]!;
  return (frequency) => {
    const at = Math.log(frequency);
    const outside = at < low ? low - at : at > high ? high - at : 0;
    return linear(x, y, at) + (SLOPE / Math.LN2) * outside;
  };
}

/** Octave levels shared among their thirds along the line that joins them, so that the three thirds of each octave add to its level. */
function thirdsOfOctaves(centre: readonly number[], level: ArrayLike<number>): (frequency: number) => number {
  const x = centre.map(Math.log);
  const line = carriedOn(x, level);
  const excess = centre.map((f, k) => octaveLevel(line, f) - level[k]!);
  return (frequency) => {
    const at = Math.log(frequency);
    const k = interval(x, at);
    return line(frequency) - excess[at - x[k]! < x[k + 1]! - at ? k : k + 1]!;
  };
}

function checkBands(bands: readonly { readonly frequency: number; readonly level: number }[]): void {
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
