import { only } from '#find';
import type { FindAsked } from '#jobs';
import { AIMS as TOLD } from '#tell';
import { readQuantity } from '#units';

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
  /** ends of a band that the dial must reach, as they are written; both empty for none */
  readonly band: { readonly from: string; readonly to: string };
  /** how long to look [s] */
  readonly seconds: number;
  readonly seed: number;
}

export const AIMS: readonly (readonly [AimChoice, string])[] = [
  ...TOLD.map(({ name, words }) => [name, words] as const),
  ['mix', 'a mix of these'],
];

export const FIRST: Asked = {
  aim: 'speech',
  mix: { speech: 0.5, loudness: 0.5, clean: 0, stations: 0 },
  wanted: [],
  band: { from: '', to: '' },
  seconds: 30,
  seed: 1,
};

/** What a set gets points for, by the aim it was found by. */
export function pointWords(aim: Shares): string {
  const given = TOLD.filter(({ name }) => aim[name] > 0).map(({ words }) => words);
  return given.length === 1 ? `Wanted: ${given[0]}.` : `Wanted, each by its share: ${given.join('; ')}.`;
}

/** The band that is asked for; null for none. */
export function bandOf({
  band,
}: Asked): { readonly ok: true; readonly band: FindAsked['band'] | null } | { readonly ok: false; readonly why: string } {
  if (band.from.trim() === '' && band.to.trim() === '') return { ok: true, band: null };
  const [from, to] = [readQuantity(band.from, 'frequency'), readQuantity(band.to, 'frequency')];
  if (!from.ok) return { ok: false, why: `From: ${from.why}. ${from.mend}` };
  if (!to.ok) return { ok: false, why: `To: ${to.why}. ${to.mend}` };
  if (!(from.value > 0 && to.value > from.value))
    return { ok: false, why: 'A band goes from a frequency to a higher one: give the lower end first.' };
  return { ok: true, band: { from: from.value, to: to.value } };
}

/** Shares of the aims; null where a mix has nothing in it. */
export function aimOf({ aim, mix }: Asked): Shares | null {
  if (aim !== 'mix') return only(aim);
  return Object.values(mix).some((share) => share > 0) ? mix : null;
}
