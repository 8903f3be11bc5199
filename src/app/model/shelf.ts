import { signal } from '@preact/signals';
import { createStore, get, set } from 'idb-keyval';
import type { JobTable, StationFigures } from '#jobs';
import type { Client } from '#rpc';
import type { Work } from './keeper.ts';

/** A set put aside to be compared with others. */
export interface ShelvedSet extends Work {
  readonly name: string;
}

const KEY = 'shelf';

/** Sets put aside, kept between visits where the browser allows it; what each comes to is worked out when it is looked at. */
export class Shelf {
  readonly sets = signal<readonly ShelvedSet[]>([]);
  /** by the set; null while it is worked out or where it cannot be */
  readonly results = signal<ReadonlyMap<ShelvedSet, readonly StationFigures[] | null>>(new Map());
  readonly notice = signal<string | null>(null);
  readonly #client: Client<JobTable>;
  #store: ReturnType<typeof createStore> | null = null;

  constructor(client: Client<JobTable>) {
    this.#client = client;
  }

  async open(): Promise<void> {
    try {
      const kept = await get<unknown>(KEY, this.#opened());
      if (Array.isArray(kept)) this.sets.value = kept.filter(isShelved);
    } catch {
      this.notice.value = 'Sets put aside stay in this tab only: the browser does not allow keeping them.';
    }
  }

  /** Puts a set aside under a name of its own. */
  async put(name: string, work: Work): Promise<void> {
    const names = new Set(this.sets.value.map((s) => s.name));
    let own = name || 'set';
    for (let n = 2; names.has(own); n++) own = `${name || 'set'} ${n}`;
    await this.#keep([...this.sets.value, { name: own, ...work }]);
  }

  async remove(name: string): Promise<void> {
    await this.#keep(this.sets.value.filter((s) => s.name !== name));
  }

  /** Works out what has not been worked out yet. */
  async work(): Promise<void> {
    for (const shelved of this.sets.value) {
      if (this.results.value.has(shelved)) continue;
      const answer = await this.#client
        .call('figures', { document: { text: JSON.stringify(shelved.document), files: shelved.files } })
        .catch(() => null);
      this.results.value = new Map([...this.results.value, [shelved, answer?.ok ? answer.value : null]]);
    }
  }

  /** A station of a shelved set, by name: another set may stand at another place. */
  station(shelved: ShelvedSet, name: string): StationFigures | null {
    return this.results.value.get(shelved)?.find((s) => s.name === name) ?? null;
  }

  async #keep(sets: readonly ShelvedSet[]): Promise<void> {
    this.sets.value = sets;
    try {
      await set(KEY, sets, this.#opened());
    } catch {
      this.notice.value = 'Sets put aside stay in this tab only: the browser has no room left or does not allow it. Save them as files.';
    }
  }

  #opened(): ReturnType<typeof createStore> {
    this.#store ??= createStore('earshot-shelf', 'sets');
    return this.#store;
  }
}

const isShelved = (o: unknown): o is ShelvedSet =>
  typeof o === 'object' && o !== null && 'name' in o && typeof o.name === 'string' && 'document' in o && 'files' in o;
