import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { FoundSet, JobTable } from '#jobs';
import type { Client } from '#rpc';
import type { Desk } from '../desk.ts';
import { isObject } from '../drawer/own-drawer.ts';
import { placeOf } from '../own-place.ts';
import { type Asked, aimOf, bandOf, FIRST } from './asked.ts';
import { foundWork, searchedPart, withFound } from './found-work.ts';
import { SearchRun } from './search-run.ts';
import { threads } from './threads.ts';

/** What a person looks for in the drawer, and the search for it: it goes on whatever view is open. */
export class Finding {
  readonly asked = signal<Asked>(FIRST);
  readonly run = signal<SearchRun | null>(null);
  /** place, listener or drawer have changed since the search began */
  readonly outdated: ReadonlySignal<boolean>;
  /** something the person should know of what was done with a set */
  readonly notice = signal<string | null>(null);
  readonly #desk: Desk;
  readonly #begun = signal('');
  readonly #start: () => readonly Client<JobTable>[];
  #threads: readonly Client<JobTable>[] | null = null;

  constructor(desk: Desk, start = threads) {
    this.#desk = desk;
    this.#start = start;
    this.outdated = computed(() => this.run.value !== null && searchedPart(desk.value.value, desk.bench.files.value) !== this.#begun.value);
  }

  ask(change: Partial<Asked>): void {
    this.asked.value = { ...this.asked.value, ...change };
  }

  /** The stations of the place as they are written, in its order. */
  stations(): readonly { readonly name: string; readonly frequency: string }[] {
    const stations = placeOf(this.#desk)?.stations;
    if (!Array.isArray(stations)) return [];
    return (stations as readonly unknown[]).map((s) => (isObject(s) ? { name: asText(s.name), frequency: asText(s.frequency) } : NAMELESS));
  }

  /** Begins anew; what was found before is given up. */
  async start(): Promise<void> {
    const { bench, value } = this.#desk;
    const asked = this.asked.value;
    const aim = aimOf(asked);
    const band = bandOf(asked);
    if (!aim || !band.ok) return;
    this.run.value?.close();
    this.#threads ??= this.#start();
    const { text, files = {} } = bench.document.value;
    const names = this.stations().map((s) => s.name);
    const wanted = asked.wanted.map((name) => names.indexOf(name)).filter((k) => k >= 0);
    this.#begun.value = searchedPart(value.value, files);
    this.notice.value = null;
    const run = new SearchRun(this.#threads, { text, files }, { aim, wanted, ...(band.band && { band: band.band }), seed: asked.seed });
    this.run.value = run;
    await run.begin(asked.seconds);
  }

  /** Puts a set in the place of the one on the bench, listening for the station it is heard best at. */
  async putOnBench(set: FoundSet, name: string): Promise<void> {
    const desk = this.#desk;
    const grafted = withFound(desk.value.value, set.text, name);
    const { files = {} } = desk.bench.document.value;
    // a drawer that was changed since may no longer hold the parts
    const reads =
      !this.outdated.value || (await desk.bench.ask('reading', 'outline', { text: JSON.stringify(grafted), files }))?.ok === true;
    desk.edit([], reads ? grafted : foundWork(set.text, name).document);
    desk.bench.station.value = set.station;
    this.notice.value = reads
      ? `${name} is on the bench. Undo brings back the set you had.`
      : `${name} is on the bench, with the place and the drawer it was found for, since its parts are in the drawer no more. Undo brings back what you had.`;
  }

  /** Puts a set aside, to be compared. */
  async putAside(set: FoundSet, name: string): Promise<void> {
    await this.#desk.shelf.put(name, foundWork(set.text, name));
    this.notice.value = `${name} is put aside: see it beside others under "compare".`;
  }
}

const NAMELESS = { name: '', frequency: '' };
const asText = (v: unknown): string => (typeof v === 'string' || typeof v === 'number' ? String(v) : '');

const findings = new WeakMap<Desk, Finding>();

/** The search of a desk. */
export function findingOf(desk: Desk): Finding {
  let finding = findings.get(desk);
  if (!finding) {
    finding = new Finding(desk);
    findings.set(desk, finding);
  }
  return finding;
}
