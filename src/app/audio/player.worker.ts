import { GivenError, hearingCautionDue, LevelMeter, REFERENCE_SOUND_PRESSURE, type SoundScale, soundScale, toSamples } from '#engine';
import { WavError } from '#wav';
import { AHEAD, BLOCK, type FromPlayer, type Play, RATE, type ToPlayer } from './protocol.ts';
import { type SetGoing, setGoing } from './set-going.ts';

/** Between two reports of how it sounds [s]. */
const REPORT = 0.25;

const post = (message: FromPlayer): void => self.postMessage(message);

/** A set that plays, block by block as the sink takes them. */
class Playing {
  readonly going: SetGoing;
  readonly #sink: MessagePort;
  readonly #all = new Float64Array(BLOCK);
  readonly #own = new Float64Array(BLOCK);
  #scale: SoundScale;
  /** of all there is to hear, from the beginning on */
  readonly #meter = new LevelMeter();
  #ownEnergy = 0;
  #blocks = 0;
  #busy = 0;
  #clipped = 0;

  constructor(going: SetGoing, sink: MessagePort, makeUpGain: number) {
    this.going = going;
    this.#sink = sink;
    this.#scale = soundScale({ makeUpGain });
    sink.onmessage = () => this.#block();
    for (let k = 0; k < AHEAD; k++) this.#block();
  }

  gain(makeUpGain: number): void {
    this.#scale = soundScale({ makeUpGain });
  }

  end(): void {
    this.#sink.close();
  }

  #block(): void {
    const began = performance.now();
    this.going.next(this.#all, this.#own);
    for (const p of this.#own) this.#ownEnergy += p * p;
    this.#meter.add(this.#all);
    toSamples(this.#scale, this.#all, this.#all);
    const samples = new Float32Array(BLOCK);
    for (let n = 0; n < BLOCK; n++) {
      const x = this.#all[n]!;
      if (x > 1 || x < -1) this.#clipped++;
      samples[n] = Math.max(-1, Math.min(1, x));
    }
    this.#sink.postMessage(samples, [samples.buffer]);
    this.#busy += performance.now() - began;
    this.#blocks++;
    if (this.#blocks * BLOCK >= REPORT * RATE) this.#report();
  }

  #report(): void {
    const { loudestA } = this.#meter.levels();
    const samples = this.#blocks * BLOCK;
    const own = this.#ownEnergy / samples;
    post({
      kind: 'state',
      state: {
        own: own > 0 ? 10 * Math.log10(own / REFERENCE_SOUND_PRESSURE ** 2) : null,
        loudestA,
        load: this.#busy / ((1e3 * samples) / RATE),
        loud: loudestA !== null && hearingCautionDue(this.#scale, loudestA),
        clipped: this.#clipped,
      },
    });
    this.#ownEnergy = 0;
    this.#blocks = 0;
    this.#busy = 0;
    this.#clipped = 0;
  }
}

let playing: Playing | null = null;

function begin(play: Play, sink: MessagePort): void {
  playing?.end();
  playing = null;
  const going = setGoing(play);
  if (!going) {
    post({ kind: 'refused', why: 'The set file has a fault; mend it first.' });
    return;
  }
  playing = new Playing(going, sink, play.makeUpGain);
  const { rate, heard, leftOut } = going.listening;
  post({ kind: 'playing', rate, heard: heard.map((h) => h.name), leftOut: leftOut.map((h) => h.name) });
}

self.onmessage = ({ data }: MessageEvent<ToPlayer>) => {
  try {
    if (data.kind === 'turn') playing?.going.listening.set.setAngle(data.angle);
    else if (data.kind === 'gain') playing?.gain(data.makeUpGain);
    else begin(data.play, data.sink);
  } catch (e) {
    if (!(e instanceof GivenError) && !(e instanceof WavError)) throw e;
    post({ kind: 'refused', why: e.message });
  }
};
