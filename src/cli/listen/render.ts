import { LevelMeter, type PassLevel, SOUND_RATE, type SoundLevels, settleEar, toSamples } from '#engine';
import type { WavWritten } from '#wav';
import type { Stop } from '../stop.ts';
import { notesOf } from './notes.ts';
import type { Plan } from './options.ts';
import type { Prepared } from './prepare.ts';
import { Progress } from './progress.ts';
import { writeSound } from './sound-file.ts';

/** Sound made between two looks at whether to go on: 20 ms. */
const PIECE = SOUND_RATE / 50;

/** What was made and written. */
export interface Rendered {
  readonly written: WavWritten;
  /** length of the sound [s] */
  readonly seconds: number;
  readonly stopped: boolean;
  /** of the set's own sound, and of all there is to hear */
  readonly own: SoundLevels;
  readonly all: SoundLevels;
  /** what was heard while the dial turned; null where it stood */
  readonly pass: readonly PassLevel[] | null;
  /** the set's own sound [Pa], where it is to be looked at afterwards */
  readonly kept: Float64Array | null;
}

/** Plays the set into the file until the time is over or a stop is asked for; the file is finished in either case. */
export async function render(name: string, prepared: Prepared, plan: Plan, stop: Stop, keep: boolean): Promise<Rendered> {
  const { listening, ear, meter } = prepared;
  const { turn } = prepared.dialled;
  const frames = Math.round(plan.seconds * SOUND_RATE);
  const file = writeSound(plan.out, plan.encoding);
  const [own, all] = [new LevelMeter(), new LevelMeter()];
  const kept = keep ? new Float64Array(frames) : null;
  const progress = new Progress('listening');
  const [volts, heard, alone] = [new Float64Array(PIECE), new Float64Array(PIECE), new Float64Array(PIECE)];
  if (turn) listening.set.setAngle(turn.to, turn.seconds);
  let made = 0;
  try {
    while (made < frames && !stop.asked) {
      const count = Math.min(PIECE, frames - made);
      const [v, h, a] = [volts.subarray(0, count), heard.subarray(0, count), alone.subarray(0, count)];
      listening.set.process(v);
      if (made === 0) settleEar(ear, v[0]!);
      ear.process(v, h, a);
      own.add(a);
      all.add(h);
      meter?.add(a);
      kept?.set(a, made);
      toSamples(plan.scale, h, h);
      file.write(h);
      made += count;
      progress.at(made / frames);
      await stop.breathe();
    }
  } finally {
    progress.done();
  }
  const seconds = made / SOUND_RATE;
  return {
    written: file.finish(notesOf(name, prepared, plan, made < frames ? seconds : null)),
    seconds,
    stopped: made < frames,
    own: own.levels(),
    all: all.levels(),
    pass: meter?.points ?? null,
    kept: kept?.subarray(0, made) ?? null,
  };
}
