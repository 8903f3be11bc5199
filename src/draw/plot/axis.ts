import { GivenError } from '#engine';
import { axisUnit, decadeText, figuresText, fixedText } from './number-text.ts';
import { LARGEST } from './series.ts';
import { linearTicks, logTicks, roundDown, type Ticks } from './ticks.ts';

export interface AxisOptions {
  /** what it is, without the unit */
  readonly label: string;
  /** SI unit or other; left out for a pure number */
  readonly unit?: string;
  readonly scale?: 'linear' | 'log';
  /** ends, in the unit; found from the data where left out */
  readonly from?: number;
  readonly to?: number;
}

/** A logarithmic axis longer than this has a prefix at every number, a shorter one the same for all. */
const OWN_PREFIXES = 100;

/** Smaller than anything that is measured: nothing. */
const NOTHING = 1e-100;
/** Values that differ by less than this part of themselves are one for the eye. */
const SAME = 1e-9;

/** An axis laid out: fractions of its length from its start. */
export interface Axis {
  readonly from: number;
  readonly to: number;
  /** with the unit as its numbers are written */
  readonly title: string;
  readonly ticks: readonly { readonly at: number; readonly text: string }[];
  readonly minor: readonly number[];
  /** 0 at its start, 1 at its end, beyond them outside; null for what a logarithm has no place for */
  place(value: number): number | null;
}

/**
 * @param values - all that is to be shown along it
 * @param wanted - about how many numbers there is room for
 * @param rounded - whether ends that were not given may be moved out to the next tick
 */
export function axis(options: AxisOptions, values: readonly number[], wanted: number, rounded: boolean, path: string): Axis {
  const log = options.scale === 'log';
  const [from, to] = ends(options, values, log, path);
  const ticksOf = (a: number, b: number, n: number) => (log ? logTicks(a, b, n) : linearTicks(a, b, n));
  let range: readonly [number, number] = [from, to];
  if (rounded && log)
    range = [
      options.from === undefined ? roundDown(from * (1 + 1e-9)) : from,
      options.to === undefined ? 1 / roundDown((1 / to) * (1 + 1e-9)) : to,
    ];
  else if (rounded) {
    const step = stepOf(linearTicks(from, to, wanted).major, to - from);
    range = [
      options.from === undefined ? Math.floor(from / step + 1e-9) * step : from,
      options.to === undefined ? Math.ceil(to / step - 1e-9) * step : to,
    ];
  }
  const [first, last] = range;
  const raw = log && last / first > OWN_PREFIXES;
  const { unit, factor } = raw
    ? { unit: axisUnit(options.unit ?? '', 1).unit, factor: 1 }
    : axisUnit(options.unit ?? '', Math.max(Math.abs(first), Math.abs(last)));
  const ticks: Ticks = ticksOf(first / factor, last / factor, wanted);
  const place = (value: number): number | null => {
    if (!log) return (value - first) / (last - first);
    return value > NOTHING ? Math.log(value / first) / Math.log(last / first) : null;
  };
  const write = (t: number) => (ticks.places !== null ? fixedText(t, ticks.places) : raw ? decadeText(t) : figuresText(t, ticks.figures));
  return {
    from: first,
    to: last,
    title: unit === '' ? options.label : `${options.label} [${unit}]`,
    ticks: ticks.major.map((t) => ({ at: place(t * factor)!, text: write(t) })),
    minor: ticks.minor.map((t) => place(t * factor)!),
    place,
  };
}

const stepOf = (major: readonly number[], range: number): number => (major.length > 1 ? major[1]! - major[0]! : range);

function ends(options: AxisOptions, values: readonly number[], log: boolean, path: string): readonly [number, number] {
  for (const key of ['from', 'to'] as const) {
    const given = options[key];
    if (given !== undefined && !(Math.abs(given) <= LARGEST && (!log || given > NOTHING)))
      throw new GivenError(
        `${path}.${key}`,
        `${given}`,
        'the axis has no place for it',
        log ? 'Give a number above zero.' : 'Give a number.',
      );
  }
  const usable = values.filter((v) => !log || v > NOTHING);
  const least = options.from ?? (usable.length > 0 ? Math.min(...usable) : log ? 1 : 0);
  const most = options.to ?? (usable.length > 0 ? Math.max(...usable) : log ? 10 : 1);
  if (options.from !== undefined && options.to !== undefined && !(least < most))
    throw new GivenError(`${path}.to`, `${most}`, `the axis begins at ${least}`, 'Give a greater number.');
  if (most - least > Math.max(NOTHING, SAME * Math.max(Math.abs(least), Math.abs(most)))) return [least, most];
  // nothing varies, or the data lie beyond a given end: room on both sides of what there is
  if (log) return options.from === undefined ? [most / 2, options.to ?? most * 2] : [least, least * 10];
  const spread = Math.max(Math.abs(least), Math.abs(most)) > NOTHING ? 0.05 * Math.max(Math.abs(least), Math.abs(most)) : 1;
  if (options.from !== undefined) return [least, least + spread];
  return [most - spread, options.to ?? most + spread];
}
