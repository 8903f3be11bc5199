import { reportStation, type SetDescription, type StationReport } from '#engine';
import { type Glance, look } from '../glance.ts';
import { worth } from './aim.ts';
import { bandEnds } from './covering.ts';
import type { Design } from './design.ts';
import { distinct } from './difference.ts';
import { heardBest } from './front.ts';
import type { Search } from './search.ts';

/** A set that was found, worked out in full. */
export interface Found {
  readonly design: Design;
  readonly set: SetDescription;
  /** by the aim, from the reports [points] */
  readonly worth: number;
  /** one for each station that counts */
  readonly reports: readonly StationReport[];
  /** the same in the few figures that a search goes by */
  readonly looks: readonly Glance[];
}

/** Candidates worked out in full for each one that is asked for: a quick look errs by up to a fifth of a decibel. */
const CANDIDATES = 3;

/** The best sets found so far, best first, each distinct from those before it; at any time, and without moving the search on. */
export function answer(search: Search, most: number): readonly Found[] {
  const { space, state } = search;
  const ranked = Object.values(state.best).sort((a, b) => b.worth - a.worth);
  const leading = ranked.slice(0, CANDIDATES * most);
  const apart = distinct(space, ranked, (s) => s.design, CANDIDATES * most);
  const full = [...new Set([...leading, ...apart])].map(({ design }) => found(search, design));
  full.sort((a, b) => b.worth - a.worth);
  // beside sets that are heard, silent ones are no answer
  const heard = full.filter((f) => stationsHeard(f) > 0);
  return distinct(space, heard.length > 0 ? heard : full, (f) => f.design, most);
}

const stationsHeard = (f: Found): number => f.looks.filter((g) => g.missing === null && g.outcome !== 'silent').length;

/** A design with its reports, as `report` gives them for its set. */
export function found(search: Search, design: Design): Found {
  const { space, state, trials } = search;
  const reception = trials.reception(design);
  const reports = space.stations.map((k) => reportStation(reception, k));
  const band = bandEnds(space.band, reception);
  const looks = space.stations.map((k, i) => ({ ...look(reception, k, reports[i]!), ...(band && { band }) }));
  return { design, set: reception.receiver.set, worth: worth(space, looks, state.aim, state.limits), reports, looks };
}

/** One figure in which a set is better than another. */
export interface Advantage {
  readonly figure: 'speech' | 'loudness' | 'distortion' | 'dial' | 'stations';
  /** by how much: intelligibility; dB louder; dB less distortion; times as slow a dial; stations more */
  readonly by: number;
}

/** Differences that nobody would notice are none. */
const NOTICED = { speech: 0.01, loudness: 0.5, distortion: 1, dial: 1.15, stations: 0.5 } as const;

/** What speaks for one set beside another, each heard at its best station. */
export function advantages(a: Found, b: Found): readonly Advantage[] {
  const [x, y] = [heardBest(a.looks), heardBest(b.looks)];
  const out: Advantage[] = [
    { figure: 'stations', by: stationsHeard(a) - stationsHeard(b) },
    { figure: 'speech', by: x.sii - y.sii },
    { figure: 'loudness', by: x.headroom - y.headroom },
    { figure: 'distortion', by: y.distortion - x.distortion },
    { figure: 'dial', by: x.hertzPerDegree > 0 ? y.hertzPerDegree / x.hertzPerDegree : 0 },
  ];
  return out.filter((o) => o.by >= NOTICED[o.figure]);
}
