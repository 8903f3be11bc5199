import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import { type Found, runOfFound, Search, type SearchHand, type Space, type Tolerance, type Trials, toWorkFrom } from '#find';
import { type Answer, type FindGiven, type JobTable, REVIVERS } from '#jobs';
import { connect, nodePort } from '#rpc';

/** Time of one portion [ms]: what Ctrl-C waits for at most. */
const PORTION = 150;
/** More threads than this gain little: no more structures than four run in the last heats. */
const MOST = 4;

export type Odds = Pick<Tolerance, 'heard' | 'understood' | 'covers' | 'samples'>;

/** Threads that search, and then work out the odds of what was found. */
export interface Hands {
  readonly hands: readonly SearchHand[];
  /** what becomes of a set in many hands, at the station it is heard best at; one hand does one at a time */
  odds(hand: number, f: Found, samples: number): Promise<Odds>;
  close(): void;
}

/** As many as the machine does at once. */
export const usualThreads = (): number => Math.min(MOST, availableParallelism());

/** This thread by itself. */
export function ownHand(space: Space, trials: Trials): Hands {
  const hand: SearchHand = async (state, what) => {
    // lets Ctrl-C in
    await new Promise((done) => setImmediate(done));
    const until = performance.now() + PORTION;
    return new Search(space, state, trials).portion(what, () => performance.now() < until);
  };
  const odds: Hands['odds'] = async (_, f, samples) => {
    const run = runOfFound(space, f);
    while (run.built.length < samples) {
      await new Promise((done) => setImmediate(done));
      run.step(Math.min(BUILT, samples - run.built.length));
    }
    return run.result();
  };
  return { hands: [hand], odds, close: () => {} };
}

/** Sets built on paper between two looks whether Ctrl-C was pressed. */
const BUILT = 8;

/** Threads of their own, each of which lays out the same drawer. */
export function threads(count: number, given: FindGiven): Hands {
  const clients = Array.from({ length: count }, () =>
    connect<JobTable>(() => nodePort(new Worker(new URL('./jobs.worker.mjs', import.meta.url))), REVIVERS),
  );
  return {
    hands: clients.map(
      (client): SearchHand =>
        async (state, what) => {
          return read(await client.call('findPortion', { ...given, state: toWorkFrom(state), what, milliseconds: PORTION }));
        },
    ),
    odds: async (hand, { design }, samples) => read(await clients[hand]!.call('findOdds', { ...given, design, samples })),
    close: () => {
      for (const c of clients) c.close();
    },
  };
}

function read<T>(answer: Answer<T>): T {
  if (answer.ok) return answer.value;
  throw new Error(`a drawer that was read once is not read again: ${answer.problems[0]?.why}`);
}
