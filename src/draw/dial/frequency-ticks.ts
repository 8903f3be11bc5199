import { figuresText } from '../plot/number-text.ts';

/** From here on frequencies are written in megahertz [Hz]. */
const MEGA_FROM = 3e6;

export interface FrequencyTicks {
  readonly unit: 'kHz' | 'MHz';
  /** with a number; `at` along the scale [mm] */
  readonly major: readonly { readonly frequency: number; readonly at: number; readonly text: string }[];
  /** without [mm] */
  readonly minor: readonly number[];
}

/** A step of 1, 2 or 5 of a decade. */
interface Step {
  readonly digit: 1 | 2 | 5;
  readonly decade: number;
}
/** Into how many a step may be cut so that the parts are such steps again, the finest first. */
const CUTS: Readonly<Record<Step['digit'], readonly number[]>> = { 1: [10, 5, 2], 2: [10, 4, 2], 5: [10, 5] };
const FINER: Readonly<Record<Step['digit'], Step['digit']>> = { 1: 5, 2: 1, 5: 2 };

interface Span {
  readonly from: number;
  readonly to: number;
  readonly step: Step;
}

/**
 * Round frequencies along a scale that may be crowded at one end and wide at the other: wherever there is room the steps are finer, and they
 * are steps of 1, 2 or 5 everywhere.
 *
 * @param place - along the scale [mm], rising or falling throughout; null outside
 * @param room - what a number needs along the scale [mm]
 * @param fine - what a mark without a number needs [mm]
 */
export function frequencyTicks(
  range: { readonly lowest: number; readonly highest: number },
  place: (frequency: number) => number | null,
  room: (text: string) => number,
  fine: number,
): FrequencyTicks {
  const unit = range.highest < MEGA_FROM ? 'kHz' : 'MHz';
  const write = (f: number) => figuresText(f / (unit === 'kHz' ? 1e3 : 1e6), 9);
  const shown = (f: number) => place(f) !== null;
  const apart = (f: number, g: number): number => {
    const [a, b] = [place(f), place(g)];
    return a === null || b === null ? Number.POSITIVE_INFINITY : Math.abs(a - b);
  };
  const clear = (f: number, g: number): boolean => apart(f, g) >= (room(write(f)) + room(write(g))) / 2;

  /** Marks between the ends of a span that may be numbered: all of the finest cut that leaves room; else as many as there is room for from the wider end on. */
  const numbered = (s: Span): { readonly values: readonly number[]; readonly spans: readonly Span[] } => {
    let best: { readonly values: readonly number[]; readonly parts: readonly Span[]; readonly share: number } | null = null;
    for (const n of CUTS[s.step.digit]) {
      const parts = cutInto(s, n);
      const inner = parts
        .slice(0, -1)
        .map((p) => p.to)
        .filter(shown);
      if (inner.length === 0) continue;
      const values = fromWiderEnd(s, inner);
      const share = values.length === inner.length ? 1 : values.length / (inner.length + 1);
      if (values.length > 0 && (!best || share > best.share + 1e-9)) best = { values, parts, share };
      if (share === 1) break;
    }
    if (!best) return { values: [], spans: [s] };
    const known = new Set([s.from, s.to, ...best.values]);
    const deeper = best.parts.map((p) =>
      [p.from, p.to].every((f) => known.has(f) || !shown(f)) ? numbered(p) : { values: [], spans: [p] },
    );
    return { values: [...best.values, ...deeper.flatMap((d) => d.values)], spans: deeper.flatMap((d) => d.spans) };
  };
  const fromWiderEnd = (s: Span, inner: readonly number[]): readonly number[] => {
    const row = [s.from, ...inner, s.to].filter((f) => inner.includes(f) || shown(f));
    const rising = apart(row[0]!, row[1]!) >= apart(row.at(-2)!, row.at(-1)!);
    const way = rising ? row : [...row].reverse();
    const end = shown(rising ? s.to : s.from) ? way.at(-1)! : null;
    const out: number[] = [];
    let before = inner.includes(way[0]!) ? null : way[0]!;
    for (const f of way) {
      if (!inner.includes(f)) continue;
      if ((before !== null && !clear(before, f)) || (end !== null && !clear(f, end))) break;
      out.push(f);
      before = f;
    }
    return out;
  };
  /** Marks without numbers: the finest even cut that can be told apart. */
  const unnumbered = (s: Span): readonly number[] => {
    for (const n of CUTS[s.step.digit]) {
      const inner = cutInto(s, n)
        .slice(0, -1)
        .map((p) => p.to);
      const row = [s.from, ...inner, s.to].filter(shown);
      if (row.every((f, i) => i === 0 || apart(row[i - 1]!, f) >= fine)) return inner.filter(shown);
    }
    return [];
  };

  const first = firstSpans(range);
  const deeper = first.map(numbered);
  const ends = first.flatMap((s) => [s.from, s.to]).filter(shown);
  const values = kept([...new Set([...ends, ...deeper.flatMap((d) => d.values)])], clear);
  const spans = deeper.flatMap((d) => d.spans);
  const marks = new Set([...spans.flatMap((s) => [s.from, s.to]).filter(shown), ...spans.flatMap(unnumbered)]);
  for (const f of values) marks.delete(f);
  return {
    unit,
    major: values.map((frequency) => ({ frequency, at: place(frequency)!, text: write(frequency) })),
    minor: [...marks].map((f) => place(f)!),
  };
}

/** The first steps may already be too near to each other where a scale is very uneven: those stay that stand clear of the one before. */
function kept(values: readonly number[], clear: (f: number, g: number) => boolean): readonly number[] {
  const out: number[] = [];
  for (const v of [...values].sort((a, b) => a - b)) {
    const before = out.at(-1);
    if (before === undefined || clear(before, v)) out.push(v);
  }
  return out;
}

const hertz = ({ digit, decade }: Step): number => Number(`${digit}e${decade}`);

function cutInto({ from, step }: Span, n: number): readonly Span[] {
  const whole = step.digit / n;
  const decade = step.decade + Math.floor(Math.log10(whole) + 1e-9);
  const digit = Math.round(whole * 10 ** (step.decade - decade)) as Step['digit'];
  const part: Step = { digit, decade };
  const first = Math.round(from / hertz(part));
  return Array.from({ length: n }, (_, i) => ({ from: multiple(first + i, part), to: multiple(first + i + 1, part), step: part }));
}

/** Multiplied, never added up, and free of the last bits: 98.2 MHz is that. */
const multiple = (k: number, step: Step): number => Number((k * hertz(step)).toPrecision(12));

/** The coarsest steps of which two marks lie in the range, with the part steps at its ends. */
function firstSpans({ lowest, highest }: { readonly lowest: number; readonly highest: number }): readonly Span[] {
  let step: Step = { digit: 1, decade: Math.ceil(Math.log10(highest)) };
  const marks = (s: Step) => Math.floor(highest / hertz(s) + 1e-9) - Math.ceil(lowest / hertz(s) - 1e-9) + 1;
  // a range of next to nothing has none: it ends at a millionth
  while (marks(step) < 2 && hertz(step) > 1e-6 * highest)
    step = { digit: FINER[step.digit], decade: step.digit === 1 ? step.decade - 1 : step.decade };
  const first = Math.floor(lowest / hertz(step) + 1e-9);
  const last = Math.ceil(highest / hertz(step) - 1e-9);
  return Array.from({ length: Math.max(0, last - first) }, (_, i) => ({
    from: multiple(first + i, step),
    to: multiple(first + i + 1, step),
    step,
  }));
}
