import { describe, expect, test } from 'vitest';
import { Cancelled, Latest, mapPool, type Signal } from '#rpc';

/** Work that ends when told to, and notices being cancelled. */
function works() {
  const begun: string[] = [];
  const end = new Map<string, () => void>();
  const work = (name: string) => (signal: Signal) =>
    new Promise<string>((resolve, reject) => {
      begun.push(name);
      end.set(name, () => resolve(name));
      signal.addEventListener('abort', () => reject(new Cancelled()));
    });
  return { begun, end, work };
}

describe('the latest call counts', () => {
  test('one runs; a newer one cancels it and what waited', async () => {
    const { begun, end, work } = works();
    const latest = new Latest();
    const [a, b, c] = ['a', 'b', 'c'].map((n) => latest.run('advice', work(n)));
    await expect(a).rejects.toBeInstanceOf(Cancelled);
    await expect(b).rejects.toThrow('a later call took its place');
    end.get('c')!();
    expect(await c).toBe('c');
    expect(begun).toEqual(['a', 'c']);
  });

  test('what runs may finish: of a stream of calls the first and the last are answered', async () => {
    const { begun, end, work } = works();
    const latest = new Latest();
    const [a, b, c] = ['a', 'b', 'c'].map((n) => latest.run('dial', work(n), 'finish'));
    await expect(b).rejects.toBeInstanceOf(Cancelled);
    end.get('a')!();
    expect(await a).toBe('a');
    await expect.poll(() => begun).toEqual(['a', 'c']);
    end.get('c')!();
    expect(await c).toBe('c');
  });

  test('keys do not meddle; after an end or a failure a key is free again', async () => {
    const { end, work } = works();
    const latest = new Latest();
    const a = latest.run('one', work('a'));
    const b = latest.run('two', work('b'));
    end.get('b')!();
    end.get('a')!();
    expect(await Promise.all([a, b])).toEqual(['a', 'b']);
    const thrown = latest.run('one', () => {
      throw new Error('at once');
    });
    await expect(thrown).rejects.toThrow('at once');
    expect(await latest.run('one', async () => 5)).toBe(5);
  });

  test('cancel takes what runs and what waits', async () => {
    const { work } = works();
    const latest = new Latest();
    const both = [latest.run('k', work('a'), 'finish'), latest.run('k', work('b'), 'finish')];
    latest.cancel('k');
    latest.cancel('nobody');
    for (const p of both) await expect(p).rejects.toBeInstanceOf(Cancelled);
    expect(await latest.run('k', async () => 1)).toBe(1);
  });
});

describe('tasks over several workers', () => {
  const later = (ms: number) => new Promise((r) => setTimeout(r, ms));

  test('results in the order of the tasks, whoever is quicker; each worker one at a time', async () => {
    const busy = new Set<number>();
    const shares: number[] = [];
    const out = await mapPool(
      [1, 2],
      [30, 1, 20, 1, 1],
      async (worker, ms) => {
        expect(busy.has(worker)).toBe(false);
        busy.add(worker);
        await later(ms);
        busy.delete(worker);
        return ms * 10;
      },
      { onProgress: (f) => shares.push(f) },
    );
    expect(out).toEqual([300, 10, 200, 10, 10]);
    expect(shares).toEqual([0.2, 0.4, 0.6, 0.8, 1]);
    await expect(mapPool([], [1], async () => 1)).rejects.toThrow('at least one worker');
  });

  test('the first failure stops the rest', async () => {
    const begun: number[] = [];
    const cancelled: number[] = [];
    const work = mapPool([1, 2], [0, 1, 2, 3, 4, 5], async (_, task, signal) => {
      begun.push(task);
      signal.addEventListener('abort', () => cancelled.push(task));
      await later(task === 1 ? 5 : 40);
      if (task === 1) throw new Error('task 1');
      return task;
    });
    await expect(work).rejects.toThrow('task 1');
    await later(60);
    expect(begun).toEqual([0, 1]);
    expect(cancelled).toContain(0);
  });

  test('a signal stops it', async () => {
    const stop = new AbortController();
    const work = mapPool([1], [1, 2, 3], async (_, t) => later(5).then(() => t), { signal: stop.signal });
    stop.abort();
    await expect(work).rejects.toBeInstanceOf(Cancelled);
  });
});
