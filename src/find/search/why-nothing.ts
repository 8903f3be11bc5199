import type { Glance } from '../glance.ts';
import { beyondLimits, edgeOf, sharpestAt } from './aim.ts';
import type { BandEnd } from './covering.ts';
import { PITCHES } from './design.ts';
import { smallSpace } from './every-design.ts';
import type { Search } from './search.ts';
import { type Space, windowOf } from './space.ts';
import { lacksDirectPath } from './stock.ts';
import type { Trial } from './trial.ts';
import { coilFault, type WindingRule } from './winding.ts';

type Shelf = 'capacitors' | 'wires' | 'formers' | 'detectors' | 'earpieces';

/** One limit that no set kept, and how near the nearest came. SI units. */
export type Reason =
  | { readonly kind: 'no-station' }
  | { readonly kind: 'no-part'; readonly part: Shelf }
  /** nothing lets the detector's direct current past earpieces that block it */
  | { readonly kind: 'no-direct-path'; readonly earpieces: readonly string[] }
  /** turns that would tune cannot be wound: what stands in the way, in the order of the bench */
  | { readonly kind: 'not-wound'; readonly rules: readonly WindingRule[] }
  /** no capacitor with any coil that can be wound; the least that lacks [F], above zero at full capacitance, below zero at least; null where no number of turns would do */
  | { readonly kind: 'not-reached'; readonly station: string; readonly frequency: number; readonly missing: number | null }
  /** on the dial, but nearer to its end than the margin; both as shares of the rotation */
  | { readonly kind: 'at-the-end'; readonly station: string; readonly frequency: number; readonly best: number; readonly margin: number }
  /** [Hz per degree] */
  | { readonly kind: 'too-sharp'; readonly station: string; readonly frequency: number; readonly best: number; readonly limit: number }
  /** an end of the wanted band beyond the dial or its margin; the least that lacks [F], null where margin alone does */
  | { readonly kind: 'band-not-covered'; readonly frequency: number; readonly missing: number | null }
  /** each limit by itself was kept by some set, all of them at once by none */
  | { readonly kind: 'not-together' }
  /** nothing is wrong with what was tried, which was too little */
  | { readonly kind: 'not-tried' };

/**
 * Why a search has found nothing, limit by limit; empty where it has found something.
 *
 * What the drawer lacks is certain. The rest is told of the sets that came nearest to the limits in each structure, or of all sets where all were tried:
 * until then a longer search may yet find one.
 */
export function whyNothing(search: Search): readonly Reason[] {
  const { space, state } = search;
  if (Object.keys(state.best).length > 0) return [];
  const lacking = lacks(space);
  if (lacking.length > 0) return lacking;
  const designs = state.through === null ? state.arms.flatMap((a) => (a.best ? [a.best.design] : [])) : smallSpace(space, Infinity)!;
  const trials = designs.map((d) => search.trials.of(d)).filter((t) => t !== null);
  return trials.length === 0 ? [{ kind: 'not-tried' }] : unkept(search, trials);
}

/** What no search can mend. */
function lacks(space: Space): readonly Reason[] {
  const { stock } = space;
  if (space.stations.length === 0) return [{ kind: 'no-station' }];
  const shelves = ['capacitors', 'wires', 'formers', 'detectors', 'earpieces'] as const;
  const empty = shelves.filter((part) => stock[part].length === 0).map((part): Reason => ({ kind: 'no-part', part }));
  if (empty.length > 0) return empty;
  return [
    ...(lacksDirectPath(stock) ? [{ kind: 'no-direct-path' as const, earpieces: stock.earpieces.map((e) => e.name) }] : []),
    ...unwindable(space),
  ];
}

const RULES: readonly WindingRule[] = ['bend', 'self-holding', 'former-length', 'wire-length'];

/** Where no coil that could tune can be wound, with the fewest turns that could. */
function unwindable(space: Space): readonly Reason[] {
  const { stock } = space;
  const met = new Set<WindingRule>();
  let tunes = false;
  for (let capacitor = 0; capacitor < stock.capacitors.length; capacitor++)
    for (let former = 0; former < stock.formers.length; former++)
      for (let wire = 0; wire < stock.wires.length; wire++)
        for (let across = 0; across <= stock.fixedCapacitors.length; across++)
          for (let pitch = 0; pitch < PITCHES.length; pitch++) {
            const window = windowOf(space, former, wire, pitch, capacitor, across);
            if (!window) continue;
            tunes = true;
            const halves = window[0];
            if (halves === 2 && pitch > 0) continue;
            const fault = coilFault(space, { former, wire, halves, pitch });
            if (!fault) return [];
            met.add(fault);
          }
  if (tunes) return [{ kind: 'not-wound', rules: RULES.filter((r) => met.has(r)) }];
  return space.stations.map((k) => ({ kind: 'not-reached', ...named(space, k), missing: null }));
}

const named = (space: Space, k: number): { readonly station: string; readonly frequency: number } => {
  const { name, frequency } = space.fields[k]!.station;
  return { station: name, frequency };
};

function unkept({ space, state }: Search, trials: readonly Trial[]): readonly Reason[] {
  const { limits } = state;
  const beyond = (g: Glance): number => beyondLimits(space, g, limits);
  const nearest = trials.flat().reduce((a, b) => (beyond(b) < beyond(a) ? b : a));
  // where any station will do, the one that came nearest speaks for all
  const counted = space.all ? space.stations : [nearest.station];
  const reasons = counted.flatMap((k): Reason[] => {
    const glances = trials.flat().filter((g) => g.station === k);
    const reached = glances.filter((g) => g.missing === null);
    if (reached.length === 0) {
      const missing = least(glances.map((g) => g.missing!));
      return [{ kind: 'not-reached', ...named(space, k), missing }];
    }
    const limit = sharpestAt(space, k, limits);
    const slowest = Math.min(...reached.map((g) => g.hertzPerDegree));
    const best = Math.max(...reached.map((g) => edgeOf(g.place)));
    return [
      ...(best < limits.margin ? [{ kind: 'at-the-end' as const, ...named(space, k), best, margin: limits.margin }] : []),
      ...(slowest > limit ? [{ kind: 'too-sharp' as const, ...named(space, k), best: slowest, limit }] : []),
    ];
  });
  const all = [...reasons, ...bandUncovered(trials, limits.margin)];
  return all.length > 0 ? all : [{ kind: 'not-together' }];
}

function bandUncovered(trials: readonly Trial[], margin: number): readonly Reason[] {
  const ends = trials.flatMap((t) => (t[0]?.band ? [t[0].band] : []));
  const alone = endsUncovered(ends, margin);
  if (alone.length > 0 || ends.length === 0) return alone;
  // either end is on some dial: of those that have one, the one that comes nearest to the other
  const lacking = ends.map((each) => each.flatMap((e) => ('missing' in e ? [e] : [])));
  if (lacking.some((l) => l.length === 0)) return [];
  const half = lacking.flatMap((l) => (l.length === 1 ? l : []));
  if (half.length === 0) return [];
  const { frequency, missing } = half.reduce((a, b) => (Math.abs(b.missing) < Math.abs(a.missing) ? b : a));
  return [{ kind: 'band-not-covered', frequency, missing }];
}

function endsUncovered(ends: readonly (readonly BandEnd[])[], margin: number): readonly Reason[] {
  return [0, 1].flatMap((side): Reason[] => {
    const each = ends.map((e) => e[side]!);
    if (each.length === 0 || each.some((e) => 'place' in e && edgeOf(e.place) >= margin)) return [];
    const reached = each.some((e) => 'place' in e);
    const missing = reached ? null : least(each.map((e) => ('missing' in e ? e.missing : 0)));
    return [{ kind: 'band-not-covered', frequency: each[0]!.frequency, missing }];
  });
}

const least = (values: readonly number[]): number => values.reduce((a, b) => (Math.abs(b) < Math.abs(a) ? b : a));
