import { afterAll, describe, expect, test } from 'vitest';
import type { JobTable } from '#jobs';
import { type Client, WorkerDied } from '#rpc';
import { SearchRun } from '../../../src/app/model/find/search-run.ts';
import { bench, document } from '../jobs/examples.ts';

const drawer = document('drawer.json');
const aim = { speech: 1, loudness: 0, clean: 0, stations: 0 };
const asked = { aim, wanted: [], seed: 2 };
const clients = [bench(), bench()];
afterAll(() => {
  for (const c of clients) c.close();
});

const until = async (so: () => boolean): Promise<void> => {
  while (!so()) await new Promise((done) => setTimeout(done, 5));
};

/** A thread that dies over some of its calls. */
function mortal(
  client: Client<JobTable>,
  dies: (call: number, job: string) => boolean,
): { client: Client<JobTable>; deaths: () => number } {
  let calls = 0;
  let deaths = 0;
  const call: Client<JobTable>['call'] = (job, given, options) => {
    if (!dies(calls++, job)) return client.call(job, given, options);
    deaths++;
    return Promise.reject(new WorkerDied('as a test would have it'));
  };
  return { client: { call, close: () => client.close() }, deaths: () => deaths };
}

describe('a search shared out among threads', () => {
  test('it ends when its time is up, with the best sets and the odds of each; then it can go on', async () => {
    const run = new SearchRun(clients, drawer, asked, 16);
    await run.begin(0.6);
    expect(run.standing.value).toBe('ended');
    expect(run.ending.value).toBe('time');
    const { sets } = run.answer.value!;
    expect(sets.length).toBeGreaterThan(1);
    for (const s of sets) expect(run.odds.value.get(s.key)).toMatchObject({ samples: 16 });
    const before = run.trials.value;
    void run.goOn(60);
    await until(() => run.trials.value > before);
    run.hold();
    expect(run.standing.value).toBe('held');
    // what was being worked on when it was held is kept, and going on at once loses nothing
    void run.goOn();
    const then = run.trials.value;
    await until(() => run.trials.value > then);
    run.stop();
    await until(() => run.answer.value!.trials === run.trials.value);
    expect(run.answer.value!.sets[0]!.worth).toBeGreaterThanOrEqual(sets[0]!.worth - 1);
    run.close();
  });

  test('a thread that dies is asked anew and goes on from where it stood; one that always dies ends the search and is told', async () => {
    const sometimes = mortal(clients[0]!, (k, job) => job === 'findPortion' && k % 3 === 1);
    const run = new SearchRun([sometimes.client], drawer, asked, 16);
    void run.begin(60);
    await until(() => run.trials.value > 0);
    const early = run.trials.value;
    await until(() => run.trials.value > early && sometimes.deaths() > 1);
    expect(run.fault.value).toBeNull();
    run.close();

    const always = mortal(clients[0]!, (_, job) => job === 'findPortion');
    const lost = new SearchRun([always.client], drawer, asked);
    await lost.begin(60);
    expect(lost.standing.value).toBe('ended');
    expect(lost.fault.value).toContain('the worker ended');
  });

  test('a drawer that cannot be read is told with its place, and nothing is searched', async () => {
    const run = new SearchRun(clients, { ...drawer, text: drawer.text.replace('"60 mm"', '"60 apples"') }, asked);
    await run.begin(60);
    expect(run.problems.value).toMatchObject([{ path: 'drawer.formers[0].length' }]);
    expect(run.trials.value).toBe(0);
  });
});
