import { Cancelled } from './errors.ts';
import { controller, type Signal } from './globals.ts';

interface Waiting {
  readonly begin: () => void;
  readonly reject: (e: Error) => void;
}

interface Lane {
  readonly cancel: () => void;
  waiting: Waiting | null;
}

/**
 * Of calls that follow one another faster than they are answered, only the latest counts: one runs, one waits, one that waited gives way with
 * Cancelled.
 *
 * What runs is cancelled by a newer call, or finishes if it is told to: a slider whose every position were cancelled by the next would
 * show nothing until it rests.
 */
export class Latest {
  private readonly lanes = new Map<string, Lane>();

  run<T>(key: string, work: (signal: Signal) => Promise<T>, running: 'cancel' | 'finish' = 'cancel'): Promise<T> {
    return new Promise((resolve, reject) => {
      const begin = (): void => {
        const own = controller();
        const lane: Lane = { cancel: () => own.abort(), waiting: null };
        this.lanes.set(key, lane);
        const done = (): void => {
          this.lanes.delete(key);
          lane.waiting?.begin();
        };
        const run = async (): Promise<T> => work(own.signal);
        void run().then(resolve, reject).finally(done);
      };
      const lane = this.lanes.get(key);
      if (!lane) return begin();
      lane.waiting?.reject(superseded());
      lane.waiting = { begin, reject };
      if (running === 'cancel') lane.cancel();
    });
  }

  /** Cancels what runs and what waits under a key. */
  cancel(key: string): void {
    const lane = this.lanes.get(key);
    if (!lane) return;
    lane.waiting?.reject(new Cancelled());
    lane.waiting = null;
    lane.cancel();
  }
}

const superseded = (): Cancelled => new Cancelled('a later call took its place');
