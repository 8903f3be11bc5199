import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import { Search, type SearchHand, type Space, type Trials, toWorkFrom } from '#find';
import { type FindGiven, type JobTable, REVIVERS } from '#jobs';
import { connect, nodePort } from '#rpc';

/** Time of one portion [ms]: what Ctrl-C waits for at most. */
const PORTION = 150;
/** More threads than this gain little: no more structures than four run in the last heats. */
const MOST = 4;

export interface Hands {
  readonly hands: readonly SearchHand[];
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
  return { hands: [hand], close: () => {} };
}

/** Threads of their own, each of which lays out the same drawer. */
export function threads(count: number, given: FindGiven): Hands {
  const clients = Array.from({ length: count }, () =>
    connect<JobTable>(() => nodePort(new Worker(new URL('./jobs.worker.mjs', import.meta.url))), REVIVERS),
  );
  return {
    hands: clients.map(
      (client): SearchHand =>
        async (state, what) => {
          const answer = await client.call('findPortion', { ...given, state: toWorkFrom(state), what, milliseconds: PORTION });
          if (answer.ok) return answer.value;
          throw new Error(`a drawer that was read once is not read again: ${answer.problems[0]?.why}`);
        },
    ),
    close: () => {
      for (const c of clients) c.close();
    },
  };
}
