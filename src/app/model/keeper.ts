import { type KeptRecord, type KeptVersion, readRecord, withVersion } from './kept-record.ts';

/** Where work is kept between visits. */
export interface Storage {
  read(): Promise<unknown>;
  /** Reads and writes in one go, with nothing of another tab in between; what `next` throws is thrown, and nothing is written. */
  update(next: (before: unknown) => KeptRecord): Promise<void>;
}

/** To the other tabs of the same app. */
export interface TabLine {
  post(revision: number): void;
  onMessage(handler: (revision: number) => void): void;
}

/** How the person's work is kept just now. */
export type Keeping =
  | { readonly kind: 'kept'; readonly at: number }
  | { readonly kind: 'saving' }
  /** only in this tab: the storage is full, is refused (as in a private window), or holds what another release has written */
  | { readonly kind: 'memory'; readonly why: 'full' | 'refused' | 'foreign' }
  /** another tab has saved something else meanwhile: nothing is written until the person has chosen */
  | { readonly kind: 'conflict'; readonly theirs: Work };

export interface Work {
  readonly document: unknown;
  readonly files: Readonly<Record<string, string>>;
}

/** What the person is told of it, and can do. */
export function keepingWords(k: Keeping): string | null {
  if (k.kind === 'conflict')
    return 'This set was changed in another tab as well. Nothing is lost: take that one, or keep yours; the other stays among the earlier versions.';
  if (k.kind !== 'memory') return null;
  const why = {
    full: 'the browser has no room left',
    refused: 'the browser does not allow it here, as in a private window',
    foreign: 'a newer release of this app has its work there',
  }[k.why];
  return `Your work is kept in this tab only: ${why}. Save it as a file before you close the tab.`;
}

class Newer extends Error {
  readonly record: KeptRecord;
  constructor(record: KeptRecord) {
    super('another tab has saved since');
    this.record = record;
  }
}
class Foreign extends Error {}

/**
 * Keeps a person's work as it changes, and never writes over what another tab has saved.
 *
 * Every save says which revision it goes on from; if the storage holds another one, it is a conflict, and the person chooses. Whatever goes
 * wrong, the work stays with the app, and each later save is tried again.
 */
export class Keeper {
  readonly #storage: Storage;
  readonly #line: TabLine;
  readonly #now: () => number;
  readonly #tell: (keeping: Keeping) => void;
  #revision = 0;
  #waiting: Work | null = null;
  #running: Promise<void> | null = null;
  #conflict: KeptRecord | null = null;

  /** @param now - [ms since 1970] */
  constructor(storage: Storage, line: TabLine, now: () => number, tell: (keeping: Keeping) => void) {
    this.#storage = storage;
    this.#line = line;
    this.#now = now;
    this.#tell = tell;
  }

  /**
   * What was kept; null where there is nothing, or it cannot be had.
   *
   * @param onNewer - another tab has saved; what it saved may be taken with `takeTheirs` if nothing was changed here
   */
  async open(onNewer: () => void): Promise<(Work & { readonly versions: readonly KeptVersion[] }) | null> {
    this.#line.onMessage((revision) => {
      if (revision > this.#revision) onNewer();
    });
    try {
      const raw = await this.#storage.read();
      if (raw === undefined) return null;
      const record = readRecord(raw);
      if (!record) {
        this.#tell({ kind: 'memory', why: 'foreign' });
        return null;
      }
      this.#revision = record.revision;
      this.#tell({ kind: 'kept', at: record.at });
      return record;
    } catch {
      this.#tell({ kind: 'memory', why: 'refused' });
      return null;
    }
  }

  /** Keeps the work; of saves that come while one is under way only the last is made. Settles when nothing is left to save, and never rejects. */
  save(work: Work): Promise<void> {
    this.#waiting = work;
    this.#running ??= this.#run().finally(() => {
      this.#running = null;
    });
    return this.#running;
  }

  /** What another tab has saved, taken in place of one's own, which stays among the versions if it was ever saved. */
  async takeTheirs(): Promise<Work | null> {
    await this.#running;
    this.#waiting = null;
    try {
      const record = readRecord(await this.#storage.read());
      if (!record) return null;
      this.#revision = record.revision;
      this.#conflict = null;
      this.#tell({ kind: 'kept', at: record.at });
      return { document: record.document, files: record.files };
    } catch {
      this.#tell({ kind: 'memory', why: 'refused' });
      return null;
    }
  }

  /** One's own work saved over that of another tab, which goes among the versions. */
  async keepMine(work: Work): Promise<void> {
    await this.#running;
    if (this.#conflict) this.#revision = this.#conflict.revision;
    const over = this.#conflict !== null;
    this.#conflict = null;
    await this.#write(work, over);
  }

  async #run(): Promise<void> {
    while (this.#waiting && !this.#conflict) {
      const work = this.#waiting;
      this.#waiting = null;
      await this.#write(work, false);
    }
  }

  async #write(work: Work, everyVersion: boolean): Promise<void> {
    this.#tell({ kind: 'saving' });
    // where there is no room, the earlier versions are what can best be spared
    for (const share of [1, 0.5, 0]) {
      try {
        const at = this.#now();
        let revision = 0;
        await this.#storage.update((raw) => {
          const before = raw === undefined ? null : readRecord(raw);
          if (raw !== undefined && !before) throw new Foreign();
          if (before && before.revision !== this.#revision) throw new Newer(before);
          const versions = before ? withVersion(before, work.document, everyVersion) : [];
          revision = this.#revision + 1;
          return { form: 1, revision, ...work, at, versions: versions.slice(0, Math.ceil(share * versions.length)) };
        });
        this.#revision = revision;
        this.#line.post(revision);
        this.#tell({ kind: 'kept', at });
        return;
      } catch (e) {
        if (e instanceof Newer) {
          this.#conflict = e.record;
          this.#tell({ kind: 'conflict', theirs: e.record });
          return;
        }
        const full = e instanceof Error && e.name === 'QuotaExceededError';
        if (full && share > 0) continue;
        this.#tell({ kind: 'memory', why: e instanceof Foreign ? 'foreign' : full ? 'full' : 'refused' });
        return;
      }
    }
  }
}
