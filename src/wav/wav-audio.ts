import { WavError } from './wav-error.ts';
import type { WavFile } from './wav-file.ts';

/** Frames read at a time. */
const CHUNK = 4096;

/** Sound of a file, left and right, full scale 1, at its own rate; endless. */
export interface WavAudio {
  readonly rate: number;
  next(left: Float64Array, right: Float64Array): void;
}

/**
 * A file as an endless source: again from its beginning after its end, or silent.
 *
 * @throws WavError if there is no sound in it
 */
export function wavAudio(file: WavFile, afterEnd: 'repeat' | 'silence'): WavAudio {
  if (file.frames === 0) throw new WavError('The WAV file', 'there is no sound in it', 'Choose another file, or record it again.');
  const [bufferLeft, bufferRight] = [new Float64Array(CHUNK), new Float64Array(CHUNK)];
  let frame = 0;
  let at = 0;
  let there = 0;
  let silent = false;
  const refill = (): void => {
    there = file.readStereo(frame, bufferLeft, bufferRight);
    frame += there;
    at = 0;
    if (there > 0) return;
    // past its end, or the file became shorter while it was read
    if (afterEnd === 'repeat' && frame > 0) {
      frame = 0;
      refill();
    } else silent = true;
  };
  return {
    rate: file.rate,
    next(left, right) {
      for (let n = 0; n < left.length; n++) {
        if (at === there && !silent) refill();
        left[n] = silent ? 0 : bufferLeft[at]!;
        right[n] = silent ? 0 : bufferRight[at]!;
        if (!silent) at++;
      }
    },
  };
}
