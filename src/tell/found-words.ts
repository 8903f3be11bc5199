import type { Advantage, Tolerance } from '#find';

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

/** How a set does as built by hand, with the error of counting a sample where it is worth telling. */
export function oddsSentence(station: string, { heard, understood, covers }: Pick<Tolerance, 'heard' | 'understood' | 'covers'>): string {
  return `As built by hand of such parts: ${station} heard ${share(heard)}, understood ${share(understood)}, the dial covering what it should ${share(covers)} of the time.`;
}

const share = ({ value, error }: Tolerance['heard']): string =>
  `${Math.round(100 * value)} %${error === null || error < 0.005 ? '' : ` (+-${Math.max(1, Math.round(100 * error))})`}`;

/** Where no set of a drawer will do: what to look for in it. */
export const NOTHING_FOUND =
  'No set of this drawer keeps to the limits here. Look whether there are capacitors that reach the station, wire and something to wind on, a detector, an earpiece, and for a piezo a resistor.';
