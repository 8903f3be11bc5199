import { Cancelled, errorOf, type Revivers, WorkerDied } from './errors.ts';
import { later, type Signal } from './globals.ts';
import type { Port } from './port.ts';
import type { Jobs } from './serve.ts';
import type { FromWorker, ToWorker } from './wire.ts';

export interface CallOptions {
  readonly signal?: Signal | undefined;
  readonly onProgress?: ((fraction: number) => void) | undefined;
  /** buffers of what is given that go over without being copied */
  readonly transfer?: readonly ArrayBuffer[] | undefined;
}

export type Given<J extends Jobs, K extends keyof J> = Parameters<J[K]>[0];
export type Result<J extends Jobs, K extends keyof J> = Awaited<ReturnType<J[K]>>;

/** The calling end of a thread that serves jobs. */
export interface Client<J extends Jobs> {
  /**
   * Has a job done. Rejects with what the job threw; with Cancelled as soon as the signal says so; with WorkerDied if the thread ends.
   */
  call<K extends keyof J & string>(job: K, given: Given<J, K>, options?: CallOptions): Promise<Result<J, K>>;
  /** Ends the thread; what is running is cancelled, and later calls are. */
  close(): void;
}

interface Pending {
  readonly resolve: (value: unknown) => void;
  readonly reject: (e: Error) => void;
  readonly onProgress: ((fraction: number) => void) | undefined;
}

/** A thread that says nothing for so long while something is asked of it is taken for dead [ms]: not every browser tells when one dies. */
const SILENCE = 60_000;

/**
 * Connects to a thread, which is started by the first call, and anew by the next call after it died.
 *
 * @param start - starts a thread and gives the line to it
 * @param revivers - for errors that are to be of their own class again
 * @param silence - after which a thread that owes an answer is given up [ms]
 */
export function connect<J extends Jobs>(start: () => Port, revivers: Revivers = {}, silence = SILENCE): Client<J> {
  const pending = new Map<number, Pending>();
  let line: Port | null = null;
  let closed = false;
  let next = 1;
  let stopWatch: (() => void) | null = null;

  /** Begins to wait anew; only while an answer is owed. */
  function listenOn(): void {
    stopWatch?.();
    stopWatch = pending.size === 0 ? null : later(() => end(new WorkerDied('it does not answer')), silence);
  }

  function end(e: Error): void {
    const ended = line;
    line = null;
    ended?.close();
    const waiting = [...pending.values()];
    pending.clear();
    for (const { reject } of waiting) reject(e);
    listenOn();
  }

  function open(): Port {
    const port = start();
    line = port;
    port.onMessage((raw) => {
      if (line === port) hear(raw as FromWorker);
    });
    port.onDeath((reason) => {
      if (line === port) end(new WorkerDied(reason));
    });
    return port;
  }

  function hear(message: FromWorker): void {
    const call = pending.get(message.id);
    if (call && message.kind !== 'progress') pending.delete(message.id);
    listenOn();
    if (!call) return;
    if (message.kind === 'progress') {
      call.onProgress?.(message.fraction);
      return;
    }
    if (message.kind === 'done') call.resolve(message.result);
    else call.reject(errorOf(message.fault, revivers));
  }

  return {
    call: <K extends keyof J & string>(job: K, given: Given<J, K>, { signal, onProgress, transfer = [] }: CallOptions = {}) => {
      if (closed || signal?.aborted) return Promise.reject(new Cancelled());
      const id = next++;
      const abort = (): void => {
        const call = pending.get(id);
        if (!call) return;
        pending.delete(id);
        listenOn();
        line?.post({ kind: 'cancel', id } satisfies ToWorker, []);
        call.reject(new Cancelled());
      };
      const outcome = new Promise<unknown>((resolve, reject) => {
        const port = line ?? open();
        port.post({ kind: 'call', id, job, given } satisfies ToWorker, transfer);
        pending.set(id, { resolve, reject, onProgress });
        listenOn();
        signal?.addEventListener('abort', abort);
      }).finally(() => signal?.removeEventListener('abort', abort));
      return outcome as Promise<Result<J, K>>;
    },
    close: () => {
      closed = true;
      end(new Cancelled('closed'));
    },
  };
}
