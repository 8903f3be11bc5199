import { afterEach, describe, expect, test } from 'vitest';
import { GivenError } from '#engine';
import { Cancelled, type Client, connect, type JobContext, type Jobs, serve } from '#rpc';
import { localLine } from './local-port.ts';

const seen: string[] = [];
const jobs = {
  double: (n: number) => 2 * n,
  echo: (given: unknown) => given,
  refuse: (turns: number) => {
    throw new GivenError('tank.coil.turns', `${turns}`, 'a coil has turns', 'Give a number above zero.');
  },
  fail: () => {
    throw Object.assign(new RangeError('out of range'), { at: { line: 3 }, hook: () => 1 });
  },
  ramp: (to: number, context: JobContext) => {
    const samples = new Float64Array(to).map((_, i) => i);
    context.transfer(samples.buffer);
    return samples;
  },
  unclonable: () => () => 1,
  long: async (name: string, context: JobContext) => {
    seen.push(`${name} begins`);
    for (let i = 0; i < 200; i++) {
      const until = Date.now() + 2;
      while (Date.now() < until);
      await context.step(i / 200);
    }
    seen.push(`${name} ends`);
    return name;
  },
} satisfies Jobs;

const clients: Client<typeof jobs>[] = [];
function client(): Client<typeof jobs> {
  const [near, far] = localLine();
  serve(jobs, far);
  const c = connect<typeof jobs>(() => near, {
    GivenError: ({ data }) => new GivenError(String(data.path), String(data.given), String(data.why), String(data.mend)),
  });
  clients.push(c);
  return c;
}
afterEach(() => {
  for (const c of clients.splice(0)) c.close();
  seen.length = 0;
});

describe('calls over a line', () => {
  test('answers reach their own callers', async () => {
    const c = client();
    expect(await Promise.all([1, 2, 3].map((n) => c.call('double', n)))).toEqual([2, 4, 6]);
  });

  test('what is given arrives as structured clone copies it: NaN, typed arrays, maps', async () => {
    const given = { n: Number.NaN, a: new Float32Array([1, 2]), m: new Map([['k', 1n]]), u: undefined };
    expect(await client().call('echo', given)).toEqual(given);
  });

  test('an error keeps its class where one is known, and what it carries', async () => {
    const c = client();
    const e = await c.call('refuse', -2).catch((x: unknown) => x);
    expect(e).toBeInstanceOf(GivenError);
    expect(e).toMatchObject({ path: 'tank.coil.turns', given: '-2', why: 'a coil has turns', mend: 'Give a number above zero.' });
    expect(await c.call('fail', undefined as never).catch((x: unknown) => x)).toMatchObject({
      name: 'RangeError',
      message: 'out of range',
      at: { line: 3 },
    });
  });

  test('a job nobody has, what cannot be copied either way: an error for that call alone', async () => {
    const c = client();
    await expect((c as unknown as Client<{ nope: () => void }>).call('nope', undefined as never)).rejects.toThrow('no job "nope"');
    await expect((c as unknown as Client<{ toString: () => void }>).call('toString', undefined as never)).rejects.toThrow('no job');
    await expect(c.call('unclonable', undefined as never)).rejects.toThrow(/clone/i);
    await expect(c.call('echo', () => 1)).rejects.toThrow(/clone/i);
    expect(await c.call('double', 4)).toBe(8);
  });

  test('buffers go over without a copy, both ways', async () => {
    const c = client();
    expect((await c.call('ramp', 4)) as Float64Array).toEqual(new Float64Array([0, 1, 2, 3]));
    const mine = new Float64Array([5, 6]);
    expect(await c.call('echo', mine, { transfer: [mine.buffer] })).toEqual(new Float64Array([5, 6]));
    expect(mine.byteLength).toBe(0);
  });

  test('progress rises to one, and other calls get in between', async () => {
    const c = client();
    const told: number[] = [];
    const long = c.call('long', 'a', { onProgress: (f) => told.push(f) });
    let answered = false;
    await c.call('double', 1).then(() => {
      answered = !seen.includes('a ends');
    });
    expect(await long).toBe('a');
    expect(answered).toBe(true);
    expect(told.length).toBeGreaterThan(3);
    expect(told.every((f, i) => f >= 0 && f <= 1 && (i === 0 || f > told[i - 1]!))).toBe(true);
  });

  test('cancelled: the caller knows at once, the job stops at its next step', async () => {
    const c = client();
    const stop = new AbortController();
    const long = c.call('long', 'a', { signal: stop.signal });
    await expect.poll(() => seen).toContain('a begins');
    stop.abort();
    await expect(long).rejects.toBeInstanceOf(Cancelled);
    await new Promise((r) => setTimeout(r, 600));
    expect(seen).toEqual(['a begins']);
  });

  test('cancelled before it began: it never begins', async () => {
    const c = client();
    const stop = new AbortController();
    const late = c.call('long', 'a', { signal: stop.signal });
    stop.abort();
    await expect(late).rejects.toBeInstanceOf(Cancelled);
    await expect(c.call('long', 'b', { signal: stop.signal })).rejects.toBeInstanceOf(Cancelled);
    expect(await c.call('double', 1)).toBe(2);
    expect(seen).toEqual([]);
  });

  test('closed: what runs and what comes later is cancelled; a client may be awaited', async () => {
    const c = await Promise.resolve(client());
    const long = c.call('long', 'a');
    c.close();
    await expect(long).rejects.toThrow('closed');
    await expect(c.call('double', 1)).rejects.toBeInstanceOf(Cancelled);
  });
});
