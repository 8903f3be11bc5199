import { expect, test } from 'vitest';
import { connect, type JobContext, serve, WorkerDied } from '#rpc';
import { localLine } from './local-port.ts';

const jobs = {
  steady: async (steps: number, context: JobContext) => {
    for (let k = 0; k < steps; k++) {
      await new Promise((resolve) => setTimeout(resolve, 30));
      await context.step(k / steps);
    }
    return steps;
  },
};

test('a thread that dies without a word is given up after a while, and started anew', async () => {
  let started = 0;
  const client = connect<typeof jobs>(
    () => {
      started++;
      const [near, far] = localLine();
      // the first thread never answers
      if (started > 1) serve(jobs, far);
      return near;
    },
    {},
    80,
  );
  await expect(client.call('steady', 1)).rejects.toThrow(WorkerDied);
  await expect(client.call('steady', 1)).resolves.toBe(1);
  expect(started).toBe(2);
  client.close();
});

test('long work that reports its progress is not given up', async () => {
  const client = connect<typeof jobs>(
    () => {
      const [near, far] = localLine();
      serve(jobs, far);
      return near;
    },
    {},
    400,
  );
  await expect(client.call('steady', 40)).resolves.toBe(40);
  client.close();
});
