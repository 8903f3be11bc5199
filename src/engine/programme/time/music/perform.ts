import { MersenneTwister } from '../../../numeric/index.ts';
import type { Recording } from '../recorded-audio.ts';
import { bell, blow, drum, MUSIC_RATE, pluck, rattle } from './instruments.ts';
import { CHORDS, HARMONY, MELODY, pitch, QUAVERS, SECOND_VOICE } from './score.ts';

/** Samples of a quaver: 0.28 s, 107 crotchets a minute. */
const QUAVER = 8960;
/** Greatest sample of the piece, full scale 1; the mix is driven so hard into a smooth curve that ends there. */
const PEAK = 0.9;
const DRIVE = 1.8;
/** Order in which the notes of a chord are broken. */
const BROKEN = [1, 3, 2, 4, 3, 2, 4, 3];

let performed: Recording | null = null;

/**
 * Our piece of music, 36 s of stereo at 32 kHz, made to be repeated: what rings on at the end rings into the beginning.
 *
 * A plucked tune left of the middle, a blown second voice right, bells from side to side, plucked bass and drum in the middle, a rattle. It is worked out
 * once and kept, the same to the bit every time.
 */
export function music(): Recording {
  performed ??= perform();
  return performed;
}

function perform(): Recording {
  const length = MELODY.length * QUAVERS * QUAVER;
  const left = new Float32Array(length);
  const right = new Float32Array(length);
  const chance = new MersenneTwister(4711);
  /** @param side - -1 left to 1 right, equal power */
  const add = (quaver: number, sound: Float64Array, gain: number, side: number): void => {
    const [a, b] = [gain * Math.cos((Math.PI / 4) * (1 + side)), gain * Math.sin((Math.PI / 4) * (1 + side))];
    for (let n = 0, at = quaver * QUAVER; n < sound.length; n++) {
      left[at] = left[at]! + a * sound[n]!;
      right[at] = right[at]! + b * sound[n]!;
      if (++at === length) at = 0;
    }
  };
  const quaverTime = QUAVER / MUSIC_RATE;
  play(MELODY, (at, note, quavers) => add(at, pluck(pitch(note), 1.5 + 0.5 * quavers, 0.22, chance), 0.3, -0.35));
  play(SECOND_VOICE, (at, note, quavers) => add(at, blow(pitch(note), 0.95 * quavers * quaverTime, chance), 0.14, 0.5));
  HARMONY.forEach((name, bar) => {
    const chord = CHORDS[name]!;
    const start = bar * QUAVERS;
    add(start, pluck(pitch(chord[0]!), 2, 0.1, chance), 0.3, 0);
    add(start + 5, pluck(2 * pitch(chord[0]!), 1.2, 0.1, chance), 0.2, 0);
    add(start, drum(0.35), 0.25, 0);
    add(start + 4, drum(0.3), 0.2, 0);
    for (let q = 0; q < QUAVERS; q++) {
      add(start + q, bell(2 * pitch(chord[BROKEN[q]!]!), 1.1), 0.07, q % 2 ? 0.8 : -0.8);
      add(start + q, rattle(0.09, chance), q % 2 ? 0.12 : 0.06, q % 4 === 3 ? -0.6 : 0.2);
    }
  });
  const greatest = Math.max(...[left, right].map((x) => x.reduce((m, v) => Math.max(m, Math.abs(v)), 0)));
  for (const x of [left, right]) for (let n = 0; n < length; n++) x[n] = (PEAK * Math.tanh((DRIVE * x[n]!) / greatest)) / Math.tanh(DRIVE);
  return { rate: MUSIC_RATE, left, right };
}

function play(bars: readonly string[], sound: (at: number, note: string, quavers: number) => void): void {
  bars.forEach((bar, b) => {
    let at = b * QUAVERS;
    for (const word of bar.split(' ')) {
      const [note, quavers] = word.split('.') as [string, string];
      if (note !== 'r') sound(at, note, Number(quavers));
      at += Number(quavers);
    }
  });
}
