import type { AudioSource } from './envelope-source.ts';

/** Sound held whole: both channels of equal length, full scale 1. */
export interface Recording {
  readonly rate: number;
  readonly left: Float32Array | Float64Array;
  readonly right: Float32Array | Float64Array;
}

/** A recording as an endless source: again from its beginning after its end, or silent. An empty one is silence. */
export function recordedAudio({ rate, left, right }: Recording, afterEnd: 'repeat' | 'silence'): AudioSource {
  const length = left.length;
  let at = 0;
  return {
    rate,
    next(first, second) {
      for (let n = 0; n < first.length; n++) {
        if (at === length && afterEnd === 'repeat') at = 0;
        first[n] = at < length ? left[at]! : 0;
        second[n] = at < length ? right[at]! : 0;
        if (at < length) at++;
      }
    },
  };
}
