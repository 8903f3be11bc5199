import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import {
  type Aim,
  type Arm,
  armsOf,
  beginSearch,
  chanceFrom,
  type Design,
  Draws,
  drawDesign,
  only,
  type Portion,
  Search,
  type SearchState,
  type Space,
  shareOut,
  spaceOf,
  Trials,
  toWorkFrom,
  USUAL_LIMITS,
  type Work,
  worth,
} from '#find';
import { readDrawerFile } from '#set-file';

/** The demo drawer and its first station. */
function demo(): Space {
  const read = readDrawerFile(readFileSync('examples/drawer.json', 'utf8'), { read: (name) => readFileSync(`examples/${name}`, 'utf8') });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const { place, ear, programme, drawer } = read.value;
  return spaceOf({ place, listener: { ear, programme }, drawer, wanted: [0] });
}

const AIM: Aim = only('loudness');
const BUDGET = 4000;
const NEAR = 0.2;
const cpu = (): number => process.cpuUsage().user / 1e6;

/** Trials and processor time after which a way of searching came within 0.2 dB of a level; null where it never did. */
interface Reached {
  readonly trials: number;
  readonly seconds: number;
}
type Way = (space: Space, trials: Trials, seed: number, note: (points: number) => boolean) => Promise<void>;

/** Follows one way until it comes near enough or has had its trials. */
async function follow(way: Way, seed: number, goal: number): Promise<{ readonly reached: Reached | null; readonly best: number }> {
  const space = demo();
  const trials = new Trials(space);
  const from = cpu();
  let best = Number.NEGATIVE_INFINITY;
  let asked = 0;
  let reached: Reached | null = null;
  await way(space, trials, seed, (points) => {
    asked++;
    best = Math.max(best, points);
    if (!reached && best > goal - NEAR) reached = { trials: asked, seconds: cpu() - from };
    return reached === null && asked < BUDGET;
  });
  return { reached, best };
}

const pointsOf = (space: Space, trials: Trials, d: Design): number => {
  const trial = trials.of(d);
  return trial ? worth(space, trial, AIM, USUAL_LIMITS) : -1e9;
};

const race: Way = async (space, trials, seed, note) => {
  const search = new Search(space, beginSearch(space, { aim: AIM, seed, small: 0 }), trials);
  let before = 0;
  for (let go = true; go; ) {
    search.step(1);
    const best = Math.max(-1e9, ...Object.values(search.state.best).map((s) => s.worth));
    for (let k = before; k < search.state.trials && go; k++) go = note(best);
    before = search.state.trials;
  }
};

const chance: Way = async (space, trials, seed, note) => {
  const draws = new Draws(chanceFrom(seed, 0));
  const arms = armsOf(space);
  for (let go = true; go; ) {
    const d = drawDesign(space, draws.oneOf(arms), draws);
    if (d) go = note(pointsOf(space, trials, d));
  }
};

/** SciPy's differential evolution, its numbers from 0 to 1 turned into the nearest design; it asks over a pipe. */
const evolution: Way = async (space, trials, seed, note) => {
  const arms = armsOf(space);
  const script = `
import sys
from scipy.optimize import differential_evolution
def f(x):
    print(*x, flush=True)
    line = sys.stdin.readline()
    if not line or line.startswith('stop'): raise SystemExit
    return -float(line)
differential_evolution(f, [(0, 1)] * 16, seed=${seed}, maxiter=100000, popsize=4, tol=0, polish=False)
`;
  const child = spawn('python3', ['-c', script], { stdio: ['pipe', 'pipe', 'ignore'] });
  try {
    for await (const line of createInterface({ input: child.stdout })) {
      const x = line.split(' ').map(Number);
      const d = nearest(space, arms, x);
      const points = d ? pointsOf(space, trials, d) : -4e4;
      const go = note(points);
      child.stdin.write(go ? `${points}\n` : 'stop\n');
      if (!go) break;
    }
  } finally {
    child.kill();
  }
};

/** The design that a point of the unit cube stands for: it leads the draws of an arm, so that near points are near designs. */
function nearest(space: Space, arms: readonly Arm[], x: readonly number[]): Design | null {
  let k = 0;
  const led = { uniform: () => Math.min(x[1 + (k++ % 15)]!, 1 - 1e-9) };
  const draws = Object.assign(new Draws([1, 2, 3, 4]), led);
  return drawDesign(space, arms[Math.min(arms.length - 1, Math.floor(x[0]! * arms.length))]!, draws);
}

/** The best that is known: the race run on for long from several seeds, every structure's best climbed to its end. */
function longBest(): { readonly points: number; readonly trials: number } {
  const space = demo();
  const trials = new Trials(space);
  let points = Number.NEGATIVE_INFINITY;
  let count = 0;
  for (const seed of [101, 102]) {
    const search = new Search(space, beginSearch(space, { aim: AIM, seed, small: 0 }), trials);
    search.step(1.5 * BUDGET);
    count += search.state.trials;
    points = Math.max(points, ...Object.values(search.state.best).map((s) => s.worth));
  }
  return { points, trials: count };
}

/** Trials of a portion: some 50 ms. */
const PORTION = 40;

/** A thread that works on what it is sent. */
if (!isMainThread && workerData?.bench === 'find') {
  const space = demo();
  const trials = new Trials(space);
  parentPort!.postMessage('ready');
  parentPort!.on('message', ({ state, what }: { state: SearchState; what: Work }) =>
    parentPort!.postMessage(new Search(space, state, trials).portion(what, (n) => n < PORTION)),
  );
}

/** Wall time that so many workers take for the same trials [s], each warmed up on the trials before; and what they found together. */
async function shared(of: number, warm: number, budget: number): Promise<{ readonly seconds: number; readonly state: SearchState }> {
  const file = fileURLToPath(import.meta.url);
  const workers = Array.from({ length: of }, () => new Worker(file, { workerData: { bench: 'find' } }));
  const message = <T>(w: Worker): Promise<T> =>
    new Promise((done, fail) => {
      w.once('error', fail);
      w.once('message', (m: T) => {
        w.off('error', fail);
        done(m);
      });
    });
  await Promise.all(workers.map((w) => message<string>(w)));
  const hands = workers.map((w) => (state: SearchState, what: Work) => {
    const answer = message<Portion>(w);
    w.postMessage({ state: toWorkFrom(state), what });
    return answer;
  });
  const space = demo();
  const begun = await shareOut(beginSearch(space, { aim: AIM, seed: 1, small: 0 }), hands, (s) => s.trials < warm);
  const from = performance.now();
  const state = await shareOut(begun, hands, (s) => s.trials < begun.trials + budget);
  const seconds = (performance.now() - from) / 1e3;
  await Promise.all(workers.map((w) => w.terminate()));
  return { seconds: (seconds * budget) / (state.trials - begun.trials), state };
}

/** Search over the demo drawer: designs a second, trials and time to within 0.2 dB of the best known beside chance and a general optimiser, and two workers against one. */
export async function run(): Promise<void> {
  if (!isMainThread) return;
  const space = demo();
  const trials = new Trials(space);
  const search = new Search(space, beginSearch(space, { aim: AIM, seed: 9, small: 0 }), trials);
  search.step(300);
  const [from, fresh] = [cpu(), trials.evaluated];
  search.step(600);
  const seconds = cpu() - from;
  console.log(
    `complete designs evaluated        ${((trials.evaluated - fresh) / seconds).toFixed(0)} a second of processor time (dial set, neighbours heard), one core`,
  );

  const best = longBest();
  console.log(
    `best known of the demo drawer     ${best.points.toFixed(2)} dB over what the ear needs, after ${best.trials} trials from two seeds`,
  );
  for (const [name, way] of [
    ['this search', race],
    ['plain random search', chance],
    ['differential evolution (SciPy)', evolution],
  ] as const) {
    const runs = [];
    for (const seed of [1, 2, 3]) runs.push(await follow(way, seed, best.points));
    const hits = runs.flatMap((r) => (r.reached ? [r.reached] : [])).sort((a, b) => a.trials - b.trials);
    const middle = hits.length > 1 ? hits[hits.length >> 1]! : null;
    const short = runs.map((r) => (best.points - r.best).toFixed(1)).join(', ');
    console.log(
      `${name.padEnd(33)} within ${NEAR} dB in ${hits.length} of ${runs.length} runs${middle ? `, middle one after ${middle.trials} trials, ${middle.seconds.toFixed(1)} s of processor` : ''}; short by ${short} dB when it ended (${BUDGET} trials at most)`,
    );
  }
  const [warm, timed] = [1500, 4000];
  const one = await shared(1, warm, timed);
  const two = await shared(2, warm, timed);
  console.log(
    `two workers against one           ${(one.seconds / two.seconds).toFixed(2)} times as fast (${one.seconds.toFixed(1)} s, ${two.seconds.toFixed(1)} s for ${timed} trials, after ${warm} to warm up)`,
  );
  const apart = await Promise.all([shared(1, warm, timed), shared(1, warm, timed)]);
  const both = Math.max(...apart.map((a) => a.seconds));
  console.log(
    `two searches side by side         ${((2 * one.seconds) / both).toFixed(2)} times one: what this machine gives to two threads at most`,
  );
}
