/**
 * A tune of our own in D, sixteen bars of eight quavers, to be played round and round.
 *
 * Melodies: notes as letter, `s` for sharp, octave and quavers; `r` rests. Every bar stands by itself.
 */
export const QUAVERS = 8;

export const MELODY: readonly string[] = [
  'd5.2 fs5.1 a5.1 g5.1 fs5.1 e5.2',
  'b4.2 d5.1 g5.1 fs5.1 e5.1 d5.2',
  'cs5.2 e5.1 a5.1 g5.1 e5.1 cs5.2',
  'd5.3 e5.1 fs5.4',
  'fs5.2 d5.1 fs5.1 b5.2 a5.2',
  'g5.2 b4.1 d5.1 g5.2 fs5.1 g5.1',
  'a5.2 g5.1 fs5.1 e5.2 cs5.1 e5.1',
  'd5.6 r.2',
  'b5.2 a5.1 g5.1 d5.2 g5.2',
  'a5.2 g5.1 fs5.1 d5.4',
  'g5.2 fs5.1 e5.1 b4.2 e5.2',
  'cs5.1 d5.1 e5.1 fs5.1 g5.2 e5.2',
  'd5.1 g5.1 b5.2 a5.1 g5.1 d5.2',
  'fs5.1 a5.1 d6.2 cs6.1 a5.1 fs5.2',
  'e5.2 g5.1 fs5.1 e5.1 d5.1 cs5.2',
  'd5.6 r.2',
];

export const SECOND_VOICE: readonly string[] = [
  'r.8',
  'r.8',
  'r.8',
  'r.4 a4.4',
  'b4.4 d5.4',
  'g4.4 b4.4',
  'a4.4 g4.4',
  'fs4.8',
  'g4.4 b4.4',
  'a4.4 fs4.4',
  'g4.4 e4.4',
  'e4.4 cs5.4',
  'b4.4 g4.4',
  'a4.4 d5.4',
  'g4.4 e4.4',
  'fs4.8',
];

/** Chords: bass note, then the notes that are broken above it. */
export const CHORDS: Readonly<Record<string, readonly string[]>> = {
  D: ['d2', 'a3', 'd4', 'fs4', 'a4'],
  G: ['g2', 'b3', 'd4', 'g4', 'b4'],
  A: ['a2', 'a3', 'cs4', 'e4', 'a4'],
  Bm: ['b2', 'b3', 'd4', 'fs4', 'b4'],
  Em: ['e2', 'b3', 'e4', 'g4', 'b4'],
};

export const HARMONY: readonly (keyof typeof CHORDS)[] = ['D', 'G', 'A', 'D', 'Bm', 'G', 'A', 'D', 'G', 'D', 'Em', 'A', 'G', 'D', 'A', 'D'];

const STEPS: Readonly<Record<string, number>> = { c: 0, d: 2, e: 4, f: 5, g: 7, a: 9, b: 11 };

/** Frequency of a note [Hz]: equal temperament, a4 = 440 Hz. */
export function pitch(note: string): number {
  const octave = Number(note.at(-1));
  const step = STEPS[note[0]!]! + (note[1] === 's' ? 1 : 0);
  return 440 * 2 ** ((step - 9) / 12 + octave - 4);
}
