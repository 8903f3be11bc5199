import type { Advantage, Tolerance } from '#find';
import { chanceWords } from './chance-words.ts';

/** Worth of a set by an aim, `93.1 points`; what rounds to nothing has no sign. */
export const pointsText = (worth: number): string => `${(Math.round(10 * worth) / 10 + 0).toFixed(1)} points`;

/** In what a set that was found is better than another. */
export function advantageWords({ figure, by }: Advantage): string {
  switch (figure) {
    case 'speech':
      return `intelligibility ${by.toFixed(2)} higher`;
    case 'loudness':
      return `${by.toFixed(1)} dB louder`;
    case 'distortion':
      return `${by.toFixed(0)} dB less distortion`;
    case 'dial':
      return `a dial ${by.toFixed(1)} times as slow`;
    case 'stations':
      return `${by} more ${by === 1 ? 'station' : 'stations'} heard`;
  }
}

/** How a set does as built by hand, each chance with what counting may be out by. */
export function oddsSentence(
  station: string,
  { heard, understood, covers, samples }: Pick<Tolerance, 'heard' | 'understood' | 'covers' | 'samples'>,
): string {
  const [h, u, c] = [heard, understood, covers].map((e) => chanceWords(e, samples));
  return `As built by hand of such parts: ${station} heard ${h}, understood ${u}; all on the dial that should be ${c}.`;
}

/** Where no set of a drawer will do; the reasons stand beside it. */
export const NOTHING_FOUND = 'No set of this drawer keeps to the limits here.';
