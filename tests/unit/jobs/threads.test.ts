import { Worker } from 'node:worker_threads';
import { afterAll, expect, test } from 'vitest';
import { GivenError } from '#engine';
import { type JobTable, REVIVERS } from '#jobs';
import { type Client, connect, mapPool, nodePort, WorkerDied } from '#rpc';
import { document, ok } from './examples.ts';

/** Threads of Node cannot load TypeScript everywhere, so they are started from the bundle, which is made before the tests. */
const ENTRY = new URL('../../../dist/cli/jobs.worker.mjs', import.meta.url);
const workers: Worker[] = [];
const thread = (): Client<JobTable> =>
  connect<JobTable>(() => {
    const worker = new Worker(ENTRY);
    workers.push(worker);
    return nodePort(worker);
  }, REVIVERS);
const clients = [thread(), thread()];
afterAll(() => {
  for (const c of clients) c.close();
});

test('stations spread over two threads come to the same as all in one', async () => {
  const demo = document('dipole-and-small-coil.json');
  const { stations } = ok(await clients[0]!.call('outline', demo));
  const spread = await mapPool(
    clients,
    stations,
    async (c, s) => ok(await c.call('evaluate', { document: demo, station: s.index })).stations[0]!,
  );
  const whole = ok(await clients[0]!.call('evaluate', { document: demo })).stations;
  expect(spread).toEqual(whole);
  expect(workers).toHaveLength(2);
});

test('a thread that is lost in the middle of its work: an error for the caller, and the next call is answered', async () => {
  const demo = document('dipole-and-small-coil.json');
  const advice = clients[1]!.call('advise', { document: demo, station: 0 });
  await clients[1]!.call('outline', demo);
  await workers[1]!.terminate();
  await expect(advice).rejects.toBeInstanceOf(WorkerDied);
  expect(ok(await clients[1]!.call('outline', demo)).stations.length).toBeGreaterThan(0);
  expect(workers).toHaveLength(3);
});

test('errors of the engine are of their class again', () => {
  const e = REVIVERS.GivenError!({ name: 'GivenError', message: '', data: { path: 'tank.coil', given: '3', why: 'no', mend: 'Yes.' } });
  expect(e).toBeInstanceOf(GivenError);
  expect(e.message).toBe('tank.coil is 3: no. Yes.');
});
