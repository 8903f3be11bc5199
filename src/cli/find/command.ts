import { join } from 'node:path';
import { drawFront } from '#draw';
import {
  answer,
  beginSearch,
  betweenHeats,
  type Found,
  heardBest,
  Search,
  type SearchState,
  type Space,
  setFileOf,
  shareOut,
  spaceOf,
  type Tolerance,
  ToleranceRun,
  Trials,
  usedParts,
} from '#find';
import { readDrawerFile } from '#set-file';
import { printJson } from '../figures-json.ts';
import { checked, reader, readText, refused } from '../load.ts';
import { makeFolder } from '../make-folder.ts';
import { pickStations } from '../pick.ts';
import { progress } from '../progress.ts';
import { Stop } from '../stop.ts';
import { writeText } from '../write-text.ts';
import { aimOf, aimText, bandOf, enough, type FindOptions, wholeOption } from './asked.ts';
import { type Hands, ownHand, threads, usualThreads } from './hands.ts';
import { keep, questionMark, takeUp } from './kept.ts';
import { dotsOf, findJson, findText } from './text.ts';

/** Sets built on paper for the odds. */
const BUILT = 256;
const MOST_THREADS = 64;

/** `earshot find`: the best sets that a drawer holds the parts of. */
export async function findCommand(file: string, options: FindOptions): Promise<void> {
  const seed = wholeOption('seed', options.seed, 0, 2 ** 32 - 1);
  const most = wholeOption('most', options.most, 1, 20);
  const count = options.threads === undefined ? usualThreads() : wholeOption('threads', options.threads, 1, MOST_THREADS);
  const limit = enough(options);
  const aim = aimOf(options.aim);
  const band = bandOf(options.band);
  const text = readText(file);
  const files: Record<string, string> = {};
  const read = readDrawerFile(text, {
    read: (name) => {
      files[name] = reader(file)(name);
      return files[name];
    },
  });
  if (!read.ok) throw refused(file, read.problems);
  const { place, ear, programme, drawer, name } = read.value;
  const names = place.stations.map((s) => s.name);
  const wanted = [...new Set((options.station ?? []).flatMap((s) => pickStations(names, s)))];
  const request = { place, listener: { ear, programme }, drawer, wanted, ...(band && { band }) };
  const source = { file, source: read.source };
  const space = checked(source, () => spaceOf(request));
  const trials = new Trials(space);
  const mark = questionMark([request, aim, seed]);
  const begun = (options.state === undefined ? null : takeUp(options.state, mark)) ?? beginSearch(space, { aim, seed });
  const asked = { aim, wanted, seed, ...(band && { band }) };
  // all sets of a small space are one way, which one thread goes
  const alone = count === 1 || begun.through !== null;
  const hands = alone ? ownHand(space, trials) : threads(count, { document: { text, files }, asked });
  const search = new Search(space, await looked(begun, hands, limit), trials);
  if (options.state !== undefined) keep(options.state, mark, search.state);
  const best = checked(source, () => answer(search, most));
  const odds = best.map((f) => oddsOf(space, f));
  if (options.out !== undefined) write(options.out, space, best, aimText(aim));
  if (options.picture !== undefined) picture(options.picture, search, best);
  if (options.json) printJson(findJson(file, search, best, odds));
  else console.log(findText(name || file, search, best, odds));
}

/** Searches until it has been enough or the person has seen enough (Ctrl-C), which leaves the best so far. */
async function looked(begun: SearchState, { hands, close }: Hands, limit: ReturnType<typeof enough>): Promise<SearchState> {
  const until = performance.now() + 1e3 * limit.seconds;
  const stop = new Stop();
  const line = progress();
  const wanted = (s: SearchState): boolean => !stop.asked && performance.now() < until && !(s.trials >= limit.trials && betweenHeats(s));
  try {
    return await shareOut(begun, hands, wanted, (state) => {
      const best = Object.values(state.best).reduce((top, s) => Math.max(top, s.worth), Number.NEGATIVE_INFINITY);
      const left = Math.max(0, (until - performance.now()) / 1e3);
      const end = Number.isFinite(left) ? `${left.toFixed(0)} s left` : `of ${limit.trials}`;
      const reached = Number.isFinite(best) ? `best ${best.toFixed(1)} points` : 'none yet';
      line.show(`${state.trials} sets tried, ${reached}, ${end} (Ctrl-C: the best so far)`);
    });
  } finally {
    close();
    line.clear();
    stop.release();
  }
}

/** How it does as built, at the station it is heard best at. */
function oddsOf(space: Space, f: Found): Tolerance {
  const { station } = heardBest(f.looks);
  const run = new ToleranceRun(
    { place: space.place, set: f.set, listener: space.listener, station },
    { parts: usedParts(space, f.design) },
  );
  run.step(BUILT);
  return run.result();
}

function write(folder: string, space: Space, best: readonly Found[], aim: string): void {
  makeFolder(folder);
  best.forEach((f, k) => {
    writeText(
      join(folder, `found-${k + 1}.json`),
      setFileOf(space, f, `Found ${k + 1}`, `Found by aim ${aim}, ${f.worth.toFixed(1)} points.`),
    );
  });
}

function picture(path: string, search: Search, best: readonly Found[]): void {
  const dots = dotsOf(search, best);
  if (dots.length === 0) console.error(`not written: ${path}: nothing is heard, so there is nothing to draw`);
  else writeText(path, drawFront(dots, { title: 'Loudness, distortion and ease of tuning' }));
}
