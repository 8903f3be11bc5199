import { expect, test } from 'vitest';
import { connect, serve, type WebEnd, WorkerDied, webPort } from '#rpc';

/** Two ends that hand messages over as a Web Worker and its scope do: events, copies, never at once. */
class End extends EventTarget {
  other: End | null = null;
  ended = false;
  postMessage(message: unknown, transfer: ArrayBuffer[]): void {
    const data: unknown = structuredClone(message, { transfer });
    setTimeout(() => this.other!.dispatchEvent(new MessageEvent('message', { data })));
  }
  terminate(): void {
    this.ended = true;
  }
}

function pair() {
  const [near, far] = [new End(), new End()];
  near.other = far;
  far.other = near;
  return [near, far] as const satisfies readonly WebEnd[];
}

test('calls over a Web Worker; an error in it ends it and rejects what is open', async () => {
  const ends: End[] = [];
  const jobs = { half: (n: number) => n / 2, never: () => new Promise<void>(() => {}) };
  const client = connect<typeof jobs>(() => {
    const [near, far] = pair();
    ends.push(near);
    serve(jobs, webPort(far));
    return webPort(near);
  });
  expect(await client.call('half', 5)).toBe(2.5);
  const open = client.call('never', undefined as never);
  ends[0]!.dispatchEvent(Object.assign(new Event('error'), { message: 'out of memory' }));
  await expect(open).rejects.toThrow(new WorkerDied('out of memory').message);
  expect(ends[0]!.ended).toBe(true);
  expect(await client.call('half', 3)).toBe(1.5);
  const unread = client.call('never', undefined as never);
  ends[1]!.dispatchEvent(new Event('messageerror'));
  await expect(unread).rejects.toThrow('could not be read');
  const unloaded = client.call('never', undefined as never);
  ends[2]!.dispatchEvent(new Event('error'));
  await expect(unloaded).rejects.toThrow('could not be loaded');
});
