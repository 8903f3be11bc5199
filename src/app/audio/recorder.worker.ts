import { GivenError, SOUND_RATE, soundScale, toSamples } from '#engine';
import { scaleSentence } from '#tell';
import { MemorySink, WavError, WavWriter } from '#wav';
import type { FromRecorder, ToRecorder } from './protocol.ts';
import { setGoing } from './set-going.ts';

const post = (message: FromRecorder, transfer: Transferable[] = []): void => self.postMessage(message, transfer);
/** Sound made between two reports: 0.1 s. */
const PIECE = SOUND_RATE / 10;

/** Plays a set into a WAV file of 24 bits in memory, with its level in the notes. */
function record({ play, seconds, name }: ToRecorder): void {
  const going = setGoing(play);
  if (!going) {
    post({ kind: 'refused', why: 'The set file has a fault; mend it first.' });
    return;
  }
  const scale = soundScale({ makeUpGain: play.makeUpGain });
  const sink = new MemorySink();
  const file = new WavWriter(sink, { rate: SOUND_RATE, channels: 1, encoding: '24-bit' });
  const frames = Math.round(seconds * SOUND_RATE);
  const [heard, own] = [new Float64Array(PIECE), new Float64Array(PIECE)];
  for (let made = 0; made < frames; made += PIECE) {
    const count = Math.min(PIECE, frames - made);
    const h = heard.subarray(0, count);
    going.next(h, own.subarray(0, count));
    toSamples(scale, h, h);
    file.write(h, h);
    post({ kind: 'progress', done: (made + count) / frames });
  }
  const { clipped } = file.finish({ INAM: `${play.station}: ${name}`, ISFT: 'Earshot', ICMT: scaleSentence(scale) });
  const bytes = sink.bytes();
  post({ kind: 'written', bytes, clipped, level: scaleSentence(scale) }, [bytes.buffer]);
}

self.onmessage = ({ data }: MessageEvent<ToRecorder>) => {
  try {
    record(data);
  } catch (e) {
    if (!(e instanceof GivenError) && !(e instanceof WavError)) throw e;
    post({ kind: 'refused', why: e.message });
  }
};
