import { Cancelled } from './errors.ts';
import { controller, type Signal } from './globals.ts';

export interface PoolOptions {
  readonly signal?: Signal | undefined;
  /** share of the tasks that are done, 0 to 1 */
  readonly onProgress?: ((fraction: number) => void) | undefined;
}

/**
 * Does tasks over several workers, each taking the next when it is free; results in the order of the tasks.
 *
 * The first that fails cancels the others and is what the whole rejects with.
 */
export async function mapPool<W, T, R>(
  workers: readonly W[],
  tasks: readonly T[],
  run: (worker: W, task: T, signal: Signal) => Promise<R>,
  { signal, onProgress }: PoolOptions = {},
): Promise<R[]> {
  if (workers.length === 0) throw new Error('a pool needs at least one worker');
  const all = controller();
  const abort = (): void => all.abort();
  signal?.addEventListener('abort', abort);
  const out = new Array<R>(tasks.length);
  let next = 0;
  let done = 0;
  const work = async (worker: W): Promise<void> => {
    for (let i = next++; i < tasks.length; i = next++) {
      if (all.signal.aborted || signal?.aborted) throw new Cancelled();
      out[i] = await run(worker, tasks[i]!, all.signal);
      done++;
      onProgress?.(done / tasks.length);
    }
  };
  try {
    await Promise.all(workers.map(work));
    return out;
  } finally {
    all.abort();
    signal?.removeEventListener('abort', abort);
  }
}
