import { Worker } from 'node:worker_threads';
import { afterAll, expect, test } from 'vitest';
import { connect, type Jobs, nodePort, WorkerDied } from '#rpc';

/** A worker by hand: the protocol as another program would speak it, and one that can be made to die. */
const SOURCE = `
  const { parentPort } = require('node:worker_threads');
  parentPort.on('message', ({ kind, id, job, given }) => {
    if (kind !== 'call') return;
    if (job === 'exit') process.exit(3);
    if (job === 'crash') throw new Error('no memory left');
    if (job === 'hang') return;
    parentPort.postMessage({ kind: 'done', id, result: given + 1 });
  });
`;
type Mortal = { next: (n: number) => number; exit: (n: null) => void; crash: (n: null) => void; hang: (n: null) => void };
let started = 0;
const client = connect<Mortal & Jobs>(() => {
  started++;
  return nodePort(new Worker(SOURCE, { eval: true }));
});
afterAll(() => client.close());

test('a thread is started by the first call only', async () => {
  expect(started).toBe(0);
  expect(await client.call('next', 1)).toBe(2);
  expect(await client.call('next', 2)).toBe(3);
  expect(started).toBe(1);
});

test.each([
  ['exit', 'it ended with code 3'],
  ['crash', 'no memory left'],
] as const)('a thread that dies by %s rejects all its calls; the next call finds a new one', async (way, why) => {
  const before = started;
  const calls = [client.call('hang', null), client.call(way, null), client.call('hang', null)];
  for (const outcome of await Promise.allSettled(calls)) {
    expect(outcome.status).toBe('rejected');
    const { reason } = outcome as PromiseRejectedResult;
    expect(reason).toBeInstanceOf(WorkerDied);
    expect(String(reason)).toContain(why);
  }
  expect(await client.call('next', 7)).toBe(8);
  expect(started).toBe(before + 1);
});

test('a thread that cannot be started says so to its call', async () => {
  const none = connect<Mortal & Jobs>(() => nodePort(new Worker('syntax error here', { eval: true })));
  await expect(none.call('next', 1)).rejects.toBeInstanceOf(WorkerDied);
  await expect(none.call('next', 1)).rejects.toBeInstanceOf(WorkerDied);
  none.close();
});
