import { signal } from '@preact/signals';
import type { Answer, Document, JobTable, TolerancePlan, ToleranceSlice } from '#jobs';
import { Cancelled, type Client, controller, type Signal, WorkerDied } from '#rpc';
import type { Problem } from '#set-file';

type HandBuilt = ToleranceSlice['built'][number];

/** Sets built at first; more than this are not built, since nobody sees them in a picture any more. */
const FIRST = 256;
const LARGEST = 8192;
/** Portions of work, after which the dots are shown: the first comes quickly [ms]. */
const PORTION = 300;
const FIRST_PORTION = 60;
/** A thread that dies this often in a row over the same work is not tried again. */
const TRIES = 3;

/** One set that is built on paper over and over in a thread of its own, each time with other errors. */
export class HandRun {
  readonly document: Document;
  /** as asked for: null for the station that is heard best */
  readonly station: number | null;
  readonly seed: number;
  readonly running = signal(true);
  /** null until it is worked out */
  readonly plan = signal<TolerancePlan | null>(null);
  readonly built = signal<readonly HandBuilt[]>([]);
  /** how many are wanted in all */
  readonly wanted = signal(FIRST);
  /** what is known of those built so far */
  readonly known = signal<ToleranceSlice | null>(null);
  readonly problems = signal<readonly Problem[]>([]);
  readonly fault = signal<string | null>(null);
  readonly #thread: Client<JobTable>;
  readonly #closing = controller();
  #turn = 0;

  constructor(thread: Client<JobTable>, document: Document, station: number | null, seed: number) {
    this.#thread = thread;
    this.document = document;
    this.station = station;
    this.seed = seed;
  }

  /** Settles when the first sets are built, or it was stopped. */
  async begin(first = FIRST): Promise<void> {
    this.wanted.value = first;
    const { document, station, seed } = this;
    const answer = await this.#ask((signal) => this.#thread.call('tolerancePlan', { document, station, seed }, { signal }));
    if (!answer) return;
    this.plan.value = answer.value;
    if (this.running.value) await this.#build();
  }

  /** How many more are built on request: as many again. */
  get further(): number {
    return Math.max(0, Math.min(this.built.value.length, LARGEST - this.built.value.length));
  }

  async more(): Promise<void> {
    if (this.running.value || this.further === 0) return;
    this.wanted.value = this.built.value.length + this.further;
    this.running.value = true;
    await this.#build();
  }

  /** What is being worked on is shown still. */
  stop(): void {
    this.running.value = false;
  }

  /** Gives it up for good; its thread goes on to serve others. */
  close(): void {
    this.running.value = false;
    this.#closing.abort();
  }

  async #build(): Promise<void> {
    const turn = ++this.#turn;
    const { document, seed } = this;
    const { station } = this.plan.value!;
    while (this.running.value && turn === this.#turn && this.built.value.length < this.wanted.value) {
      const from = this.built.value.length;
      const milliseconds = from === 0 ? FIRST_PORTION : PORTION;
      const given = { document, station, seed, from, most: this.wanted.value, milliseconds };
      const answer = await this.#ask((signal) => this.#thread.call('toleranceSlice', given, { signal }));
      if (!answer) break;
      // the portion of a turn before came in meanwhile
      if (from !== this.built.value.length) continue;
      this.built.value = [...this.built.value, ...answer.value.built];
      this.known.value = answer.value;
    }
    if (turn === this.#turn) this.running.value = false;
  }

  /** Has the thread do something; null where it cannot be, which is then told. */
  async #ask<T>(call: (signal: Signal) => Promise<Answer<T>>): Promise<(Answer<T> & { readonly ok: true }) | null> {
    for (let tries = 1; ; tries++) {
      try {
        const answer = await call(this.#closing.signal);
        if (answer.ok) return answer;
        this.problems.value = answer.problems;
      } catch (e) {
        if (e instanceof WorkerDied && tries < TRIES) continue;
        if (!(e instanceof Cancelled)) this.fault.value = e instanceof Error ? e.message : String(e);
      }
      this.running.value = false;
      return null;
    }
  }
}
