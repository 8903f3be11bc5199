import {
  assemble,
  EarInTime,
  GivenError,
  hearingCautionDue,
  LevelMeter,
  type Listening,
  listen,
  modulator,
  type Reception,
  type SoundScale,
  soundScale,
  standAt,
  toSamples,
} from '#engine';
import { readSetFile } from '#set-file';
import { WavError } from '#wav';
import { AHEAD, BLOCK, type FromPlayer, type Play, RATE, type SoundState, type ToPlayer } from './protocol.ts';
import { audioOf, driveOf } from './sent.ts';

/** Between two reports of how it sounds [s]. */
const REPORT = 0.25;
const NOISE_SEED = 1;

const post = (message: FromPlayer): void => self.postMessage(message);

/** A set going, block by block as the sink takes them. */
class Going {
  readonly listening: Listening;
  private readonly ear: EarInTime;
  private readonly sink: MessagePort;
  private scale: SoundScale;
  private meters = { own: new LevelMeter(), all: new LevelMeter() };
  private readonly volts = new Float64Array(BLOCK);
  private readonly all = new Float64Array(BLOCK);
  private readonly own = new Float64Array(BLOCK);
  private blocks = 0;
  private busy = 0;
  private clipped = 0;

  constructor(reception: Reception, play: Play, sink: MessagePort) {
    const wanted = reception.signals.findIndex((s) => s.received.station.name === play.station);
    const { listener } = reception.receiver;
    this.listening = listen(reception, {
      station: wanted,
      angle: play.angle,
      ...(play.with.noise ? { noise: NOISE_SEED } : {}),
      broadcast: (k, rate, offset) => {
        const { modulation, programme } = reception.signals[k]!.received.station;
        const sent = k === wanted ? play.sent : ({ kind: 'own' } as const);
        const audio = audioOf(sent, programme, play.sentences, k, listener.programme.tone);
        return {
          source: modulator(audio, modulation, rate, { drive: driveOf(sent, modulation, listener.programme), offset }),
          turned: true,
        };
      },
    });
    this.ear = new EarInTime(reception.receiver, { seed: NOISE_SEED, room: play.with.room, hearingLimit: play.with.hearingLimit });
    this.scale = soundScale({ makeUpGain: play.makeUpGain });
    this.sink = sink;
    sink.onmessage = () => this.block();
    for (let k = 0; k < AHEAD; k++) this.block();
  }

  gain(makeUpGain: number): void {
    this.scale = soundScale({ makeUpGain });
  }

  end(): void {
    this.sink.close();
  }

  private block(): void {
    const began = performance.now();
    const { volts, all, own, meters } = this;
    this.listening.set.process(volts);
    this.ear.process(volts, all, own);
    meters.own.add(own);
    meters.all.add(all);
    toSamples(this.scale, all, all);
    const samples = new Float32Array(BLOCK);
    for (let n = 0; n < BLOCK; n++) {
      const x = all[n]!;
      if (x > 1 || x < -1) this.clipped++;
      samples[n] = Math.max(-1, Math.min(1, x));
    }
    this.sink.postMessage(samples, [samples.buffer]);
    this.busy += performance.now() - began;
    this.blocks++;
    if (this.blocks * BLOCK >= REPORT * RATE) this.report();
  }

  private report(): void {
    const own = this.meters.own.levels();
    const all = this.meters.all.levels();
    const state: SoundState = {
      own: own.level,
      allA: all.loudestA,
      load: this.busy / ((1e3 * this.blocks * BLOCK) / RATE),
      loud: all.loudestA !== null && hearingCautionDue(this.scale, all.loudestA),
      clipped: this.clipped,
    };
    post({ kind: 'state', state });
    this.meters = { own: new LevelMeter(), all: new LevelMeter() };
    this.blocks = 0;
    this.busy = 0;
    this.clipped = 0;
  }
}

let going: Going | null = null;

function begin(play: Play, sink: MessagePort): void {
  going?.end();
  going = null;
  const result = readSetFile(play.text, { read: (name) => fileNamed(play.files, name) });
  if (!result.ok || !result.value.place) {
    post({ kind: 'refused', why: 'The set file has a fault; mend it first.' });
    return;
  }
  const { place, aerial, tank, detector, phones, ear, programme } = result.value;
  const all = standAt(place, assemble({ aerial, tank, detector, phones }, { ear, programme }));
  const reception = play.with.neighbours ? all : { ...all, signals: all.signals.filter((s) => s.received.station.name === play.station) };
  going = new Going(reception, play, sink);
  const { rate, heard, leftOut } = going.listening;
  post({ kind: 'playing', rate, heard: heard.map((h) => h.name), leftOut: leftOut.map((h) => h.name) });
}

function fileNamed(files: Play['files'], name: string): string {
  if (!Object.hasOwn(files, name)) throw new Error(`there is no file ${name}`);
  return files[name]!;
}

self.onmessage = ({ data }: MessageEvent<ToPlayer>) => {
  try {
    if (data.kind === 'turn') going?.listening.set.setAngle(data.angle);
    else if (data.kind === 'gain') going?.gain(data.makeUpGain);
    else begin(data.play, data.sink);
  } catch (e) {
    if (!(e instanceof GivenError) && !(e instanceof WavError)) throw e;
    post({ kind: 'refused', why: e.message });
  }
};
