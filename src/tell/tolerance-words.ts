import {
  type DialSpread,
  type Influences,
  leading,
  mending,
  type Quantiles,
  type Scatter,
  type Tolerance,
  type Trim,
  type Trimmed,
} from '#find';
import { writeForPeople } from '#units';
import { chanceWords } from './chance-words.ts';

export interface ToleranceLine {
  readonly label: string;
  readonly text: string;
}

/** What the words on many builds need to know beside their figures. */
export interface ToleranceFacts {
  readonly station: string;
  /** of the dial, from end to end [rad] */
  readonly rotation: number;
  /** stations on the dial of the set as meant */
  readonly reached: number;
}

/** Odds, dial and loudness of a set that was built over and over, a line each. */
export function toleranceLines(t: Tolerance, spread: DialSpread, { station, rotation, reached }: ToleranceFacts): readonly ToleranceLine[] {
  const chance = (e: Tolerance['heard']): string => chanceWords(e, t.samples);
  const { headroom } = t.loudness;
  return [
    { label: `${station} is heard`, text: chance(t.heard) },
    { label: 'most words understood', text: chance(t.understood) },
    {
      label: 'on the dial all that should be',
      text:
        reached === 0
          ? 'as meant, no station is on the dial'
          : `${chance(t.covers)}; that is ${reached} ${reached === 1 ? 'station' : 'stations'}`,
    },
    {
      label: `the dial stands for ${station}`,
      text: spread.place ? degreesWithin(spread.place, rotation) : 'nowhere: it is never reached',
    },
    {
      label: 'the dial set as meant is off by',
      text: spread.off
        ? `${within(spread.off, signedHertz)} (one standard deviation: ${Number((100 * t.dial.frequency).toPrecision(2))} % of the frequency)`
        : 'nothing that can be built',
    },
    { label: 'best band over what the ear needs', text: headroom ? within(headroom, (v) => v.toFixed(0), ' dB') : 'nothing arrives' },
  ];
}

/** One of the errors that matter most. */
export interface InfluenceRow {
  readonly label: string;
  readonly extent: string;
  /** of all that varies, `62 of 100` */
  readonly share: string;
  /** what one standard deviation of it does */
  readonly deviation: string;
  /** how to trim it after building, one way each; with what that does */
  readonly mends: readonly string[];
}

/** What no set built on paper differs in. */
export const NOT_SCATTERED = 'Not in it: errors of the aerial, whose wires are not solved anew.';

export interface InfluenceWords {
  readonly rows: readonly InfluenceRow[];
  /** how far the shares can be trusted */
  readonly trust: string;
  /** what no trimming changes; empty where that is nothing */
  readonly beyond: string;
}

/** The errors of the set itself that move its dial, or its loudness, most, and how each is trimmed. */
export function influenceWords(
  scatters: readonly Scatter[],
  of: Influences | null,
  ways: readonly Trim[],
  figure: Trimmed,
  most = 3,
): InfluenceWords {
  if (!of) return { rows: [], trust: 'Too few sets are built yet to tell.', beyond: '' };
  const rows = leading(scatters, of, most).map(({ scatter, share, slope }): InfluenceRow => {
    const mends = mending(scatter, ways, figure).slice(0, MENDS);
    return {
      label: scatter.label,
      extent: scatter.extent,
      share: shareWords(share),
      deviation: figure === 'dial' ? plainHertz(slope) : decibels(Math.abs(slope)),
      mends: mends.length > 0 ? mends.map((w) => mendWords(w, slope, figure)) : ['choose another piece'],
    };
  });
  const explained = Math.round(100 * of.explained);
  const trust =
    explained >= TRUSTED
      ? `Errors taken one by one account for ${explained} of 100 parts of it: the shares can be trusted.`
      : `Errors taken one by one account for ${explained} of 100 parts of it; the rest comes of errors together, so take the shares as rough.`;
  const others = scatters.reduce((sum, { ofTheSet }, k) => (ofTheSet ? sum : sum + of.shares[k]!), 0);
  const beyond = others < 0.005 ? '' : `Place and ear have ${shareWords(others)} parts of it: no trimming changes that.`;
  return { rows, trust, beyond };
}

/** Ways shown for each error; parts of 100 from which shares are taken at their word (common practice, no source). */
const MENDS = 2;
const TRUSTED = 80;

function mendWords({ words, moves, louder }: Trim, slope: number, figure: Trimmed): string {
  if (figure === 'loudness') return `${words}: ${decibels(louder!)} louder`;
  const times = Math.abs(slope / moves);
  const needed = times >= 0.05 && times <= 50 ? `; a usual error takes ${Number(times.toPrecision(2))} times as much` : '';
  return `tunes too ${moves < 0 ? 'high' : 'low'}: ${words} (${signedHertz(moves)}${needed})`;
}

export interface TrimRow {
  readonly words: string;
  readonly moves: string;
  readonly louder: string;
}

/** Each way to trim the finished set, with what it does to dial and loudness. */
export const trimRows = (ways: readonly Trim[]): readonly TrimRow[] =>
  ways.map(({ words, moves, louder }) => ({
    words,
    moves: signedHertz(moves),
    louder: louder === null ? '-' : Math.abs(louder) < 0.05 ? 'no change' : `${louder > 0 ? '+' : '-'}${decibels(Math.abs(louder))}`,
  }));

/** How much of what varies comes of one error. */
export const shareWords = (share: number): string => {
  const parts = 100 * share;
  return parts < 0.5 ? 'under 1 of 100' : `${Math.round(Math.min(100, parts))} of 100`;
};

const within = ([low, middle, high]: Quantiles, write: (v: number) => string, unit = ''): string =>
  `${write(low)} to ${write(high)}${unit} in 80 of 100, middle ${write(middle)}${unit}`;

/** To a degree, or to a tenth where they lie close. */
function degreesWithin(shares: Quantiles, rotation: number): string {
  const [low, middle, high] = shares.map((s) => (s * rotation * 180) / Math.PI) as unknown as Quantiles;
  return within([low, middle, high], (v) => v.toFixed(high - low < 5 ? 1 : 0), ' degrees');
}

const decibels = (v: number): string => `${Number(v.toFixed(1)) + 0} dB`;
const plainHertz = (v: number): string => writeForPeople(Math.abs(v), 'frequency', 2);
const signedHertz = (v: number): string => (Math.abs(v) < 0.5 ? '0 Hz' : `${v > 0 ? '+' : '-'}${plainHertz(v)}`);
