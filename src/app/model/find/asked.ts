import type { FindAsked } from '#jobs';

/** The four aims in the words a person chooses by; `mix` is shares of them. */
export type AimChoice = keyof FindAsked['aim'] | 'mix';
export type Shares = FindAsked['aim'];

/** What a person asks a search for. */
export interface Asked {
  readonly aim: AimChoice;
  /** used where the aim is a mix, each 0 to 1 */
  readonly mix: Shares;
  /** names of stations that must be on the dial and count; none: whichever is heard best */
  readonly wanted: readonly string[];
  /** how long to look [s] */
  readonly seconds: number;
  readonly seed: number;
}

export const AIMS: readonly (readonly [AimChoice, string])[] = [
  ['speech', 'the most words understood'],
  ['loudness', 'the loudest'],
  ['clean', 'the least distortion, as long as it is heard'],
  ['stations', 'as many stations as can be heard'],
  ['mix', 'a mix of these'],
];

export const FIRST: Asked = {
  aim: 'speech',
  mix: { speech: 0.5, loudness: 0.5, clean: 0, stations: 0 },
  wanted: [],
  seconds: 30,
  seed: 1,
};

export const NOTHING: Shares = { speech: 0, loudness: 0, clean: 0, stations: 0 };

/** What a set gets points for, by the aim it was found by. */
export function pointWords(aim: Shares): string {
  const given = (Object.keys(POINTS) as (keyof Shares)[]).filter((name) => aim[name] > 0);
  const [first] = given;
  if (given.length === 1 && first) return `Points: ${POINTS[first]}.`;
  return `Points, each by its share: ${given.map((name) => POINTS[name]).join('; ')}.`;
}

const POINTS: Readonly<Record<keyof Shares, string>> = {
  speech: '100 where every word comes through',
  loudness: '1 for each dB over what the ear needs',
  clean: '1 for each dB that distortion stays below the programme',
  stations: '100 where all stations are heard',
};

/** Shares of the aims; null where a mix has nothing in it. */
export function aimOf({ aim, mix }: Asked): Shares | null {
  if (aim !== 'mix') return { ...NOTHING, [aim]: 1 };
  return Object.values(mix).some((share) => share > 0) ? mix : null;
}
