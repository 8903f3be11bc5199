import { join } from 'node:path';
import {
  AIM_NAMES,
  type AimName,
  advantages,
  answer,
  beginSearch,
  type Found,
  only,
  Search,
  type Space,
  setFileOf,
  spaceOf,
  type Tolerance,
  ToleranceRun,
  USUAL_LIMITS,
  usedParts,
  whyNothing,
} from '#find';
import { readDrawerFile } from '#set-file';
import { advantageWords, cautions, NOTHING_FOUND, oddsSentence, reasonWords, setWords, verdictSentence } from '#tell';
import { BadFile } from './bad-file.ts';
import { bold, dim } from './colour.ts';
import { printJson } from './figures-json.ts';
import { checked, reader, readText, refused } from './load.ts';
import { makeFolder } from './make-folder.ts';
import { pickStations } from './pick.ts';
import { progress } from './progress.ts';
import { wrap } from './table.ts';
import { writeText } from './write-text.ts';

export interface FindOptions {
  readonly aim: string;
  readonly station?: readonly string[];
  readonly seed: string;
  readonly seconds: string;
  readonly most: string;
  readonly out?: string;
  readonly json?: boolean;
}

const WIDTH = 96;
/** Trials between two looks at the clock, and sets built on paper for the odds. */
const SLICE = 25;
const BUILT = 256;

/** `earshot find`: the best sets that a drawer holds the parts of. */
export async function findCommand(file: string, options: FindOptions): Promise<void> {
  const seed = whole('seed', options.seed, 0, 2 ** 32 - 1);
  const seconds = Number(options.seconds);
  if (!(seconds > 0 && seconds <= 86_400)) throw new BadFile(`--seconds is ${options.seconds}: give a number above 0, at most 86400.`);
  const most = whole('most', options.most, 1, 20);
  const aim = AIM_NAMES.find((a) => a === options.aim);
  if (!aim) throw new BadFile(`--aim is ${options.aim}: there are ${AIM_NAMES.join(', ')}.`);
  const read = readDrawerFile(readText(file), { read: reader(file) });
  if (!read.ok) throw refused(file, read.problems);
  const { place, ear, programme, drawer, name } = read.value;
  const names = place.stations.map((s) => s.name);
  const wanted = [...new Set((options.station ?? []).flatMap((s) => pickStations(names, s)))];
  const source = { file, source: read.source };
  const space = checked(source, () => spaceOf({ place, listener: { ear, programme }, drawer, wanted }));
  const search = new Search(space, beginSearch(space, { aim: only(aim), seed, limits: USUAL_LIMITS }));
  await run(search, seconds);
  const best = checked(source, () => answer(search, most));
  const odds = best.map((f) => oddsOf(space, f));
  if (options.out !== undefined) write(options.out, space, best, aim);
  if (options.json) {
    printJson(foundJson(file, search, best, odds));
    return;
  }
  console.log(bold(`${name || file}: sets for ${place.name}, by ${aim}`));
  const { trials, done, through } = search.state;
  const how =
    done && through !== null
      ? `all ${trials} sets that can be built and could tune were tried: there is no better one`
      : `${trials} sets tried, seed ${seed}`;
  console.log(dim(how));
  if (best.length === 0)
    console.log([`\n${NOTHING_FOUND}`, ...whyNothing(search).map(reasonWords)].map((line) => wrap(line, WIDTH)).join('\n'));
  best.forEach((f, k) => {
    console.log(`\n${foundText(space, f, odds[k]!, best[k + 1], k)}`);
  });
  const warnings = [...new Set(best.flatMap((f) => cautions(f.set, f.reports)))];
  if (warnings.length > 0) console.log(`\n${bold('Cautions')}\n${warnings.map((w) => wrap(`- ${w}`, WIDTH, '  ')).join('\n')}`);
}

/** Searches until the time is up or the person has seen enough (Ctrl-C), which leaves the best so far. */
async function run(search: Search, seconds: number): Promise<void> {
  const until = performance.now() + 1e3 * seconds;
  let stopped = false;
  const stop = (): void => {
    stopped = true;
  };
  process.once('SIGINT', stop);
  const line = progress();
  while (!stopped && !search.state.done && performance.now() < until) {
    search.step(SLICE);
    const left = Math.max(0, (until - performance.now()) / 1e3);
    const best = Object.values(search.state.best).reduce((top, s) => Math.max(top, s.worth), Number.NEGATIVE_INFINITY);
    line.show(
      `${search.state.trials} sets tried, ${Number.isFinite(best) ? `best ${best.toFixed(1)} points` : 'none yet'}, ${left.toFixed(0)} s left (Ctrl-C: the best so far)`,
    );
    // lets the signal in
    await new Promise((done) => setImmediate(done));
  }
  line.clear();
  process.removeListener('SIGINT', stop);
}

function whole(name: string, given: string, least: number, most: number): number {
  const value = Number(given);
  if (Number.isInteger(value) && value >= least && value <= most) return value;
  throw new BadFile(`--${name} is ${given}: give a whole number from ${least} to ${most}.`);
}

/** How it does as built, at the station it is heard best at. */
function oddsOf(space: Space, f: Found): Tolerance {
  const station = bestStation(f);
  const run = new ToleranceRun(
    { place: space.place, set: f.set, listener: space.listener, station },
    { parts: usedParts(space, f.design) },
  );
  run.step(BUILT);
  return run.result();
}

const bestStation = (f: Found): number => f.looks.reduce((a, b) => (b.headroom > a.headroom ? b : a)).station;

function foundText(space: Space, f: Found, odds: Tolerance, next: Found | undefined, k: number): string {
  const detector = usedParts(space, f.design).find((p) => p.path === 'detector')?.title;
  const lines = [bold(`${k + 1}. ${f.worth.toFixed(1)} points`), ...setWords(f.set, detector).map((w) => wrap(w, WIDTH, '  '))];
  for (const report of f.reports) lines.push(wrap(verdictSentence(report, undefined), WIDTH));
  const station = space.place.stations[bestStation(f)]!.name;
  lines.push(wrap(oddsSentence(station, odds), WIDTH));
  const better = next ? advantages(f, next).map(advantageWords) : [];
  if (better.length > 0) lines.push(wrap(`Better than the next: ${better.join(', ')}.`, WIDTH));
  return lines.join('\n');
}

function write(folder: string, space: Space, best: readonly Found[], aim: AimName): void {
  makeFolder(folder);
  best.forEach((f, k) => {
    writeText(
      join(folder, `found-${k + 1}.json`),
      setFileOf(space, f, `Found ${k + 1}`, `Found by aim ${aim}, ${f.worth.toFixed(1)} points.`),
    );
  });
}

function foundJson(file: string, search: Search, best: readonly Found[], odds: readonly Tolerance[]): unknown {
  const { space, state } = search;
  return {
    file,
    aim: state.aim,
    seed: state.seed,
    trials: state.trials,
    all: state.done && state.through !== null,
    sets: best.map((f, k) => ({
      worth: f.worth,
      set: JSON.parse(setFileOf(space, f, `Found ${k + 1}`, '')),
      stations: f.reports.map((r, i) => ({ name: r.station, verdict: r.verdict, ...f.looks[i]! })),
      odds: { heard: odds[k]!.heard, understood: odds[k]!.understood, covers: odds[k]!.covers, samples: odds[k]!.samples },
      betterThanNext: best[k + 1] ? advantages(f, best[k + 1]!) : [],
    })),
    front: state.front.map(({ design: _, ...p }) => p),
  };
}
