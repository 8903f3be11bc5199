import { AIM_NAMES, type Aim, type AimName, only, type SearchRequest } from '#find';
import { readQuantity } from '#units';
import { BadFile } from '../bad-file.ts';

/** The options of `earshot find`, as they were written. */
export interface FindOptions {
  readonly aim: string;
  readonly station?: readonly string[];
  readonly band?: string;
  readonly seed: string;
  readonly seconds?: string;
  readonly trials?: string;
  readonly threads?: string;
  readonly most: string;
  readonly builds: string;
  readonly state?: string;
  readonly out?: string;
  readonly picture?: string;
  readonly json?: boolean;
}

const SECONDS = 20;
const LONGEST = 86_400;

/** How long to look: seconds, or so many trials and then to the end of the heat. */
export function enough({ seconds, trials }: FindOptions): { readonly seconds: number; readonly trials: number } {
  const until = Number(seconds ?? SECONDS);
  if (!(until > 0 && until <= LONGEST)) throw new BadFile(`--seconds is ${seconds}: give a number above 0, at most ${LONGEST}.`);
  return {
    // trials asked for alone are all made, however long they take
    seconds: seconds === undefined && trials !== undefined ? Number.POSITIVE_INFINITY : until,
    trials: trials === undefined ? Number.POSITIVE_INFINITY : wholeOption('trials', trials, 1, 1e9),
  };
}

export function wholeOption(name: string, given: string, least: number, most: number): number {
  const value = Number(given);
  if (given.trim() !== '' && Number.isInteger(value) && value >= least && value <= most) return value;
  throw new BadFile(`--${name} is ${given}: give a whole number from ${least} to ${most}.`);
}

/** `speech`, or shares of several: `speech=2,clean=1`. */
export function aimOf(given: string): Aim {
  const shares = given.split(',').map((part): readonly [AimName, number] => {
    const [name = '', share = '1', ...more] = part.split('=').map((t) => t.trim());
    const aim = AIM_NAMES.find((a) => a === name);
    if (!aim) throw new BadFile(`--aim is ${given}: there are ${AIM_NAMES.join(', ')}, or shares of them, as in speech=2,clean=1.`);
    const value = Number(share);
    if (more.length > 0 || share === '' || !(value >= 0 && value < Number.POSITIVE_INFINITY))
      throw new BadFile(`--aim is ${given}: the share of ${name} is a number, 0 or more, as in speech=2,clean=1.`);
    return [aim, value];
  });
  if (new Set(shares.map(([name]) => name)).size < shares.length) throw new BadFile(`--aim is ${given}: each aim has one share.`);
  if (!shares.some(([, share]) => share > 0)) throw new BadFile(`--aim is ${given}: one share at least must be above 0.`);
  if (shares.length === 1) return only(shares[0]![0]);
  return { ...NONE, ...Object.fromEntries(shares) };
}

const NONE: Aim = { speech: 0, loudness: 0, clean: 0, stations: 0 };

/** An aim as it is written. */
export const aimText = (aim: Aim): string => {
  const some = AIM_NAMES.filter((name) => aim[name] > 0);
  return some.length === 1 ? some[0]! : some.map((name) => `${name}=${aim[name]}`).join(',');
};

/** `87.5 MHz to 108 MHz` [Hz]. */
export function bandOf(given: string | undefined): SearchRequest['band'] {
  if (given === undefined) return undefined;
  const ends = given.split(/\s+to\s+/);
  if (ends.length !== 2) throw new BadFile(`--band is ${given}: give two frequencies, as in "87.5 MHz to 108 MHz".`);
  const [from, to] = ends.map((text) => {
    const reading = readQuantity(text.trim(), 'frequency');
    if (!reading.ok) throw new BadFile(`--band is ${given}\n  ${reading.why}\n  ${reading.mend}`);
    return reading.value;
  });
  return { from: from!, to: to! };
}
