import { Cancelled, faultOf } from './errors.ts';
import { turn } from './globals.ts';
import type { Port } from './port.ts';
import type { FromWorker, ToWorker } from './wire.ts';

/** What a job may do while it runs. */
export interface JobContext {
  /**
   * To be awaited between steps of long work: reports how far it is (0 to 1), lets other messages in, and throws Cancelled if the work is no
   * longer wanted. Costs next to nothing when called more often than needed.
   */
  step(fraction?: number): Promise<void>;
  /** These buffers of the result go over without being copied. They must not be needed here again. */
  transfer(...buffers: readonly ArrayBuffer[]): void;
}

/** Jobs by name: plain data in, plain data out. */
export type Jobs = Readonly<Record<string, (given: never, context: JobContext) => unknown>>;

/** How long a job may run before it looks whether it is still wanted [ms]: half a frame of a screen. */
const LOOK_EVERY = 8;

/** Answers calls that come in at a port. Jobs that await run side by side. */
export function serve(jobs: Jobs, port: Port): void {
  const running = new Set<number>();
  const unwanted = new Set<number>();
  const answer = (message: FromWorker, transfer: readonly ArrayBuffer[] = []): void => port.post(message, transfer);

  async function run(id: number, name: string, given: unknown): Promise<void> {
    running.add(id);
    const transfer: ArrayBuffer[] = [];
    let looked = Date.now();
    const context: JobContext = {
      step: async (fraction) => {
        if (Date.now() - looked >= LOOK_EVERY) {
          if (fraction !== undefined) answer({ kind: 'progress', id, fraction });
          await turn();
          looked = Date.now();
        }
        if (unwanted.has(id)) throw new Cancelled();
      },
      transfer: (...buffers) => void transfer.push(...buffers),
    };
    try {
      const job = Object.hasOwn(jobs, name) ? jobs[name]! : null;
      if (!job) throw new Error(`there is no job "${name}"`);
      // a cancel that came in right behind the call is seen before the work begins
      await turn();
      if (unwanted.has(id)) throw new Cancelled();
      const result = await job(given as never, context);
      answer({ kind: 'done', id, result }, transfer);
    } catch (e) {
      answer({ kind: 'failed', id, fault: faultOf(e) });
    } finally {
      running.delete(id);
      unwanted.delete(id);
    }
  }

  port.onMessage((raw) => {
    const message = raw as ToWorker;
    if (message.kind === 'call') void run(message.id, message.job, message.given);
    else if (running.has(message.id)) unwanted.add(message.id);
  });
}
