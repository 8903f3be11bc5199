import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { JobTable } from '#jobs';
import type { Client } from '#rpc';
import type { Desk } from '../desk.ts';
import { isObject } from '../drawer/own-drawer.ts';
import { thread } from '../find/threads.ts';
import { HandRun } from './hand-run.ts';

/** What becomes of the set on the bench in many hands: what is asked for, and the run, which goes on whatever view is open. */
export class ManyHands {
  /** name of the station it is judged by; null for the one that is heard best */
  readonly station = signal<string | null>(null);
  readonly seed = signal(1);
  readonly run = signal<HandRun | null>(null);
  /** the set, its place or who listens have changed since the run began */
  readonly outdated: ReadonlySignal<boolean>;
  readonly #desk: Desk;
  readonly #begun = signal('');
  readonly #start: () => Client<JobTable>;
  #thread: Client<JobTable> | null = null;

  constructor(desk: Desk, start = thread) {
    this.#desk = desk;
    this.#start = start;
    this.outdated = computed(() => this.run.value !== null && judged(desk.value.value, desk.bench.files.value) !== this.#begun.value);
  }

  /** Names of the stations of the place, as far as they are known. */
  stations(): readonly string[] {
    return this.#desk.bench.outline.value?.stations.map((s) => s.name) ?? [];
  }

  /** Begins anew with the set as it is now; what was built before is given up. */
  async start(): Promise<void> {
    const { bench, value } = this.#desk;
    this.run.value?.close();
    this.#thread ??= this.#start();
    const { text, files = {} } = bench.document.value;
    const at = this.station.value === null ? -1 : this.stations().indexOf(this.station.value);
    if (at < 0) this.station.value = null;
    this.#begun.value = judged(value.value, files);
    const run = new HandRun(this.#thread, { text, files }, at < 0 ? null : at, this.seed.value);
    this.run.value = run;
    await run.begin();
  }
}

/** All of a document that a run goes by, as text. */
function judged(document: unknown, files: Readonly<Record<string, string>>): string {
  const { name: _, notes: __, ...rest } = isObject(document) ? document : {};
  return JSON.stringify([rest, Object.entries(files).sort(([a], [b]) => (a < b ? -1 : 1))]);
}

const known = new WeakMap<Desk, ManyHands>();

/** The hands that build what is on a desk. */
export function manyHandsOf(desk: Desk): ManyHands {
  let hands = known.get(desk);
  if (!hands) {
    hands = new ManyHands(desk);
    known.set(desk, hands);
  }
  return hands;
}
