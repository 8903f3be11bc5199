import { join } from 'node:path';
import { drawFront } from '#draw';
import { answer, beginSearch, betweenHeats, type Found, Search, type SearchState, setFileOf, shareOut, spaceOf, Trials } from '#find';
import { readDrawerFile } from '#set-file';
import { pointsText } from '#tell';
import { printJson } from '../figures-json.ts';
import { checked, reader, readText, refused } from '../load.ts';
import { makeFolder } from '../make-folder.ts';
import { pickStations } from '../pick.ts';
import { progress } from '../progress.ts';
import { Stop } from '../stop.ts';
import { writeText } from '../write-text.ts';
import { aimOf, aimText, bandOf, enough, type FindOptions, wholeOption } from './asked.ts';
import { type Hands, type Odds, ownHand, threads, usualThreads } from './hands.ts';
import { keep, questionMark, takeUp } from './kept.ts';
import { dotsOf, findJson, findText } from './text.ts';

/** Time between two looks whether Ctrl-C was pressed [ms]. */
const LOOK = 100;
const MOST_THREADS = 64;

/** `earshot find`: the best sets that a drawer holds the parts of. */
export async function findCommand(file: string, options: FindOptions): Promise<void> {
  const seed = wholeOption('seed', options.seed, 0, 2 ** 32 - 1);
  const most = wholeOption('most', options.most, 1, 20);
  const builds = wholeOption('builds', options.builds, 0, 100_000);
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
  try {
    const search = new Search(space, await looked(begun, hands, limit), trials);
    if (options.state !== undefined) keep(options.state, mark, search.state);
    const best = checked(source, () => answer(search, most));
    tell(file, name || file, search, best, await oddsOf(best, hands, builds), options);
  } finally {
    hands.close();
  }
}

function tell(
  file: string,
  heading: string,
  search: Search,
  best: readonly Found[],
  odds: readonly (Odds | null)[],
  options: FindOptions,
): void {
  if (options.out !== undefined) write(options.out, search, best);
  if (options.picture !== undefined) picture(options.picture, search, best);
  if (options.json) printJson(findJson(file, search, best, odds));
  else console.log(findText(heading, search, best, odds));
}

/** Searches until it has been enough or the person has seen enough (Ctrl-C), which leaves the best so far. */
async function looked(begun: SearchState, { hands }: Hands, limit: ReturnType<typeof enough>): Promise<SearchState> {
  const until = performance.now() + 1e3 * limit.seconds;
  const stop = new Stop();
  const line = progress();
  const wanted = (s: SearchState): boolean => !stop.asked && performance.now() < until && !(s.trials >= limit.trials && betweenHeats(s));
  try {
    return await shareOut(begun, hands, wanted, (state) => {
      const best = Object.values(state.best).reduce((top, s) => Math.max(top, s.worth), Number.NEGATIVE_INFINITY);
      const left = Math.max(0, (until - performance.now()) / 1e3);
      const end = Number.isFinite(left) ? `${left.toFixed(0)} s left` : `of ${limit.trials}`;
      const reached = Number.isFinite(best) ? `best ${pointsText(best)}` : 'none yet';
      line.show(`${state.trials} sets tried, ${reached}, ${end} (Ctrl-C: the best so far)`);
    });
  } finally {
    line.clear();
    stop.release();
  }
}

/** How each does as built, shared out among the hands; Ctrl-C leaves out those not worked out yet. */
async function oddsOf(best: readonly Found[], { hands, odds }: Hands, builds: number): Promise<readonly (Odds | null)[]> {
  const out: (Odds | null)[] = best.map(() => null);
  if (builds === 0) return out;
  const stop = new Stop();
  const line = progress();
  let next = 0;
  const stopped = (async () => {
    while (!stop.asked && next < best.length + hands.length) await new Promise((done) => setTimeout(done, LOOK));
  })();
  const work = async (hand: number): Promise<void> => {
    for (let k = next++; k < best.length && !stop.asked; k = next++) {
      line.show(`odds as built by hand: set ${k + 1} of ${best.length} (Ctrl-C: leaves them out)`);
      out[k] = await odds(hand, best[k]!, builds);
    }
  };
  try {
    await Promise.race([Promise.all(hands.map((_, hand) => work(hand))), stopped]);
    return [...out];
  } finally {
    line.clear();
    stop.release();
  }
}

function write(folder: string, { space, state }: Search, best: readonly Found[]): void {
  const aim = aimText(state.aim);
  makeFolder(folder);
  best.forEach((f, k) => {
    writeText(join(folder, `found-${k + 1}.json`), setFileOf(space, f, `Found ${k + 1}`, `Found by aim ${aim}, ${pointsText(f.worth)}.`));
  });
}

function picture(path: string, search: Search, best: readonly Found[]): void {
  const dots = dotsOf(search, best);
  if (dots.length === 0) console.error(`not written: ${path}: nothing is heard, so there is nothing to draw`);
  else writeText(path, drawFront(dots, { title: 'Loudness, distortion and ease of tuning' }));
}
