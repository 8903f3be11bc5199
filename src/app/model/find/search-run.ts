import { signal } from '@preact/signals';
import { type SearchHand, type SearchState, shareOut, toWorkFrom } from '#find';
import type { Answer, Document, FindAnswer, FindAsked, FindPlan, FoundOdds, FoundSet, FrontSet, JobTable } from '#jobs';
import { type Client, WorkerDied } from '#rpc';
import type { Problem } from '#set-file';

/** How a search stands: at work, held, or at an end, of which it can go on. */
export type Standing = 'running' | 'held' | 'ended';
export type Ending = 'time' | 'stopped' | 'all' | 'fault';

/** Sets shown; portions of work, after which a thread hands over where it stands [ms]; sets built on paper for the odds. */
const MOST = 5;
const PORTION = 300;
const BUILT = 256;
/** Share of the time that may go into working out the best so far, and the least between two such looks [ms]. */
const LOOKING = 0.15;
const LEAST_BETWEEN = 1000;
/** A thread that dies this often in a row over the same work is not tried again. */
const TRIES = 3;

/**
 * One search through one drawer, shared out among threads. All that matters of it is in its state: a thread that dies is started anew, and works its portion again.
 */
export class SearchRun {
  readonly document: Document;
  readonly asked: FindAsked;
  readonly standing = signal<Standing>('running');
  readonly ending = signal<Ending | null>(null);
  readonly plan = signal<FindPlan | null>(null);
  readonly trials = signal(0);
  /** time spent searching, and allowed [ms] */
  readonly spent = signal(0);
  readonly allowed = signal(0);
  readonly answer = signal<FindAnswer | null>(null);
  /** sets picked from the front, by key */
  readonly picked = signal<ReadonlyMap<string, FoundSet>>(new Map());
  /** odds as built, by key; a number is the share that is worked out */
  readonly odds = signal<ReadonlyMap<string, FoundOdds | number>>(new Map());
  readonly problems = signal<readonly Problem[]>([]);
  readonly fault = signal<string | null>(null);
  readonly #threads: readonly Client<JobTable>[];
  readonly #built: number;
  #state: SearchState | null = null;
  /** portions being worked on; turns of going on that were begun */
  #atWork: Promise<unknown> = Promise.resolve();
  #turn = 0;
  #resting = true;
  #looking: Promise<void> | null = null;
  #lookAgain = 0;
  #closed = false;

  /** @param built - sets built on paper for the odds of each */
  constructor(threads: readonly Client<JobTable>[], document: Document, asked: FindAsked, built = BUILT) {
    this.#threads = threads;
    this.#built = built;
    this.document = document;
    this.asked = asked;
  }

  /** Plans the search and begins it; settles when it first comes to rest. */
  async begin(seconds: number): Promise<void> {
    this.allowed.value = 1e3 * seconds;
    const plan = await this.#ask(0, 'findPlan', {});
    if (!plan) return;
    this.plan.value = plan;
    this.#state = plan.state;
    if (this.#stands('running')) await this.goOn();
  }

  /** @param seconds - further time; left out to use up what is left of the last */
  async goOn(seconds = 0): Promise<void> {
    const turn = ++this.#turn;
    this.standing.value = 'running';
    this.ending.value = null;
    // a portion that is still being worked on is of the turn before
    await this.#atWork;
    if (this.#closed || turn !== this.#turn) return;
    if (seconds > 0) this.allowed.value = this.spent.value + 1e3 * seconds;
    this.#resting = false;
    const stopClock = this.#startClock();
    this.#atWork = this.#search(turn);
    await this.#atWork;
    stopClock();
    if (turn === this.#turn) await this.#rest(turn);
  }

  async #rest(turn: number): Promise<void> {
    // one that is under way knows nothing of the last portions
    await this.#looking;
    await this.#look();
    if (turn !== this.#turn) return;
    this.#resting = true;
    if (this.#closed || this.#stands('held')) return;
    this.ending.value ??= this.answer.value?.all ? 'all' : 'time';
    this.standing.value = 'ended';
    await this.#oddsOfAll();
  }

  hold(): void {
    if (this.#stands('running')) this.standing.value = 'held';
  }

  stop(): void {
    this.ending.value = 'stopped';
    this.standing.value = 'ended';
    if (this.#resting) void this.#oddsOfAll();
  }

  #stands(so: Standing): boolean {
    return this.standing.value === so;
  }

  /** Gives the search up for good; its threads go on to serve others. */
  close(): void {
    this.#closed = true;
    this.standing.value = 'ended';
  }

  /** Shows a set of the front as a card. */
  async pick({ key, design }: FrontSet): Promise<void> {
    if (this.set(key)) return;
    const set = await this.#ask(0, 'findSet', { design });
    if (set) this.picked.value = new Map([...this.picked.value, [key, set]]);
  }

  drop(key: string): void {
    this.picked.value = new Map([...this.picked.value].filter(([k]) => k !== key));
  }

  /** A set that is shown, by its key. */
  set(key: string): FoundSet | null {
    return this.answer.value?.sets.find((s) => s.key === key) ?? this.picked.value.get(key) ?? null;
  }

  /** Works out the odds of a set as built by hand; once. */
  async workOdds({ key, design }: FoundSet, thread = this.#threads.length - 1): Promise<void> {
    if (this.odds.value.has(key)) return;
    const note = (value: FoundOdds | number): void => {
      this.odds.value = new Map([...this.odds.value, [key, value]]);
    };
    note(0);
    const odds = await this.#ask(thread, 'findOdds', { design, samples: this.#built }, note);
    if (odds) note(odds);
    else this.odds.value = new Map([...this.odds.value].filter(([k]) => k !== key));
  }

  async #oddsOfAll(): Promise<void> {
    const sets = this.answer.value?.sets ?? [];
    const count = this.#threads.length;
    await Promise.all(
      this.#threads.map(async (_, k) => {
        for (let i = k; i < sets.length; i += count) if (!this.#closed && this.#stands('ended')) await this.workOdds(sets[i]!, k);
      }),
    );
  }

  /** All threads at the search, portion by portion. */
  async #search(turn: number): Promise<void> {
    if (!this.#state) return;
    const wanted = (): boolean => !this.#closed && turn === this.#turn && this.#stands('running') && this.spent.value < this.allowed.value;
    const hand =
      (k: number): SearchHand =>
      (state, what) => {
        const milliseconds = Math.max(10, Math.min(PORTION, this.allowed.value - this.spent.value));
        return this.#ask(k, 'findPortion', { state: toWorkFrom(state), what, milliseconds });
      };
    await shareOut(
      this.#state,
      this.#threads.map((_, k) => hand(k)),
      wanted,
      (state) => {
        if (this.#closed) return;
        this.#state = state;
        this.trials.value = state.trials;
        if (performance.now() >= this.#lookAgain) void this.#look();
      },
    );
  }

  /** The best so far, worked out in full; one look at a time. */
  #look(): Promise<void> {
    this.#looking ??= this.#lookNow().finally(() => {
      this.#looking = null;
    });
    return this.#looking;
  }

  async #lookNow(): Promise<void> {
    const began = performance.now();
    const state = this.#state;
    if (!state) return;
    const answer = await this.#ask(0, 'findAnswer', { state, most: MOST });
    if (this.#closed || !answer) return;
    this.answer.value = answer;
    const took = performance.now() - began;
    this.#lookAgain = performance.now() + Math.max(LEAST_BETWEEN, took / LOOKING);
  }

  #startClock(): () => void {
    const before = this.spent.value;
    const began = performance.now();
    const tick = (): void => {
      this.spent.value = before + performance.now() - began;
    };
    const timer = setInterval(tick, 200);
    return () => {
      clearInterval(timer);
      tick();
    };
  }

  /** Has a thread do a job for this search; null where it cannot be, which is then told. */
  async #ask<K extends FindJob>(
    thread: number,
    job: K,
    more: Omit<Parameters<JobTable[K]>[0], 'document' | 'asked'>,
    onProgress?: (share: number) => void,
  ): Promise<Result<K> | null> {
    const given = { document: this.document, asked: this.asked, ...more } as unknown as Parameters<JobTable[K]>[0];
    for (let tries = 1; ; tries++) {
      try {
        const answer = (await this.#threads[thread]!.call(job, given, { onProgress })) as Answer<Result<K>>;
        if (answer.ok) return answer.value;
        this.problems.value = answer.problems;
      } catch (e) {
        if (e instanceof WorkerDied && tries < TRIES) continue;
        this.fault.value = e instanceof Error ? e.message : String(e);
      }
      this.ending.value = 'fault';
      this.standing.value = 'ended';
      return null;
    }
  }
}

type FindJob = 'findPlan' | 'findPortion' | 'findAnswer' | 'findSet' | 'findOdds';
type Result<K extends FindJob> = Awaited<ReturnType<JobTable[K]>> extends Answer<infer T> ? T : never;
