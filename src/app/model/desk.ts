import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { JobTable } from '#jobs';
import type { Client } from '#rpc';
import type { Problem } from '#set-file';
import { FIRST, firstSet } from '../first-set.ts';
import { exampleAddresses } from '../shipped-files.ts';
import { browserStorage, browserTabs } from './browser-storage.ts';
import { type Path, withValue } from './edit.ts';
import { beginning, edited, type History, redone, undone } from './history.ts';
import { Keeper, type Keeping, keepingWords, type Work } from './keeper.ts';
import type { KeptVersion } from './kept-record.ts';
import type { GivenFile } from './open-files.ts';
import { isShared } from './share-mark.ts';
import { Shelf } from './shelf.ts';
import { shippedFiles } from './shipped.ts';
import { Workbench } from './workbench.ts';

/** Work is kept this long after the last change [ms]. */
const REST = 400;

/** The document as the person has it, with its past, kept from visit to visit, and what may be done with it as a whole. */
export class Desk {
  readonly bench: Workbench;
  /** sets put aside */
  readonly shelf: Shelf;
  /** the document as JSON */
  readonly value: ReadonlySignal<unknown>;
  readonly text: ReadonlySignal<string>;
  readonly name: ReadonlySignal<string>;
  readonly canUndo: ReadonlySignal<boolean>;
  readonly canRedo: ReadonlySignal<boolean>;
  /** something the person should know that is no fault of the set */
  readonly notice = signal<string | null>(null);
  readonly keeping = signal<Keeping | null>(null);
  /** what is said of how the work is kept, where something is to be said */
  readonly keepingNotice: ReadonlySignal<string | null>;
  /** earlier versions that are kept */
  readonly versions = signal<readonly KeptVersion[]>([]);
  readonly #history = signal<History<unknown>>(beginning(null));
  readonly #keeper: Keeper;
  #timer: ReturnType<typeof setTimeout> | null = null;

  constructor(client: Client<JobTable>) {
    this.value = computed(() => this.#history.value.now);
    this.text = computed(() => JSON.stringify(this.value.value, null, 2));
    this.name = computed(() => nameOf(this.value.value));
    this.canUndo = computed(() => this.#history.value.past.length > 0);
    this.canRedo = computed(() => this.#history.value.future.length > 0);
    this.keepingNotice = computed(() => (this.keeping.value ? keepingWords(this.keeping.value) : null));
    this.bench = new Workbench(this.text, client);
    this.shelf = new Shelf(client);
    this.#keeper = new Keeper(browserStorage(), browserTabs(), Date.now, (keeping) => {
      this.keeping.value = keeping;
    });
  }

  /** Goes on with a shared set, else with what was kept, else with the first example. */
  async begin(fragment: string): Promise<void> {
    const kept = await this.#keeper.open(() => void this.#newerElsewhere());
    this.versions.value = kept?.versions ?? [];
    if (kept) this.#begin(kept);
    else await this.#openFirst();
    if (isShared(fragment)) await this.openLink(fragment);
    await this.shelf.open();
  }

  edit(path: Path, value: unknown, drag: string | null = null): void {
    this.#put(withValue(this.value.value, path, value), drag);
  }

  undo(): void {
    this.#history.value = undone(this.#history.value);
    this.#changed();
  }

  redo(): void {
    this.#history.value = redone(this.#history.value);
    this.#changed();
  }

  problemsAt(path: Path): readonly Problem[] {
    const own = path.reduce<string>(
      (text, key) => (typeof key === 'number' ? `${text}[${key}]` : text === '' ? key : `${text}.${key}`),
      '',
    );
    return this.bench.problems.value.filter((p) => p.path === own);
  }

  async adopt(key: string): Promise<void> {
    const answer = await this.bench.ask('adopt', 'adopt', { document: this.bench.document.value, station: this.bench.station.value, key });
    if (answer?.ok) this.#put(JSON.parse(answer.value), null);
  }

  async #openFirst(): Promise<void> {
    const known = await firstSet();
    if (!known) return this.openExample(FIRST);
    this.bench.known.value = known;
    this.open({ document: JSON.parse(known.text), files: known.files });
  }

  async openExample(name: string): Promise<void> {
    try {
      const files = await shippedFiles();
      this.open({ document: JSON.parse(files[name]!), files });
    } catch (e) {
      this.notice.value = `The example could not be loaded: ${(e as Error).message}. What you had is still here.`;
    }
  }

  /** A set takes the place of the one there was, which can be had back. */
  open({ document, files }: Work): void {
    this.bench.files.value = { ...this.bench.files.value, ...files };
    this.bench.station.value = 0;
    this.#put(document, null);
  }

  async openFiles(given: readonly GivenFile[]): Promise<void> {
    const { openFiles } = await import('./open-files.ts');
    const { work, files, notices } = await openFiles(given, { ...(await shippedFiles()), ...this.bench.files.value });
    if (work) this.open(work);
    else this.bench.files.value = files;
    if (notices.length > 0) this.notice.value = notices.join(' ');
  }

  async openLink(fragment: string): Promise<void> {
    const { readShared } = await import('./share-link.ts');
    const shared = await readShared(fragment);
    if (shared.ok) this.open(shared.work);
    else this.notice.value = [shared.why, ...shared.problems.map((p) => `${p.path}: ${p.why}.`), shared.mend].join(' ');
  }

  /** Puts a link to the set on the clipboard; null where it is too long for one. */
  async share(): Promise<string | null> {
    const { shareFragment } = await import('./share-link.ts');
    const fragment = await shareFragment({ document: this.value.value, files: this.bench.files.value });
    if (fragment === null) {
      this.notice.value = 'This set is too long for a link. Save it as a file and hand that on.';
      return null;
    }
    const link = `${location.href.split('#')[0]}#${fragment}`;
    const copied = await navigator.clipboard.writeText(link).then(
      () => true,
      () => false,
    );
    this.notice.value = copied
      ? 'A link to this set is on the clipboard. Who opens it has the set; it goes through no server.'
      : `The link could not be put on the clipboard; here it is: ${link}`;
    return link;
  }

  async takeTheirs(): Promise<void> {
    const theirs = await this.#keeper.takeTheirs();
    if (theirs) this.open(theirs);
  }

  async keepMine(): Promise<void> {
    await this.#keeper.keepMine(this.work());
  }

  #begin({ document, files }: Work): void {
    this.bench.files.value = files;
    this.#history.value = beginning(document);
  }

  #put(value: unknown, drag: string | null): void {
    const history = this.#history.value;
    this.#history.value = history.now === null ? beginning(value) : edited(history, value, drag);
    this.#changed();
  }

  /** The dial is set afresh, and the work kept once the hand rests. */
  #changed(): void {
    this.bench.hand.value = null;
    void this.#fetchNamed();
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.#keeper.save(this.work()), REST);
  }

  /** A file that comes along is fetched once the document names it. */
  async #fetchNamed(): Promise<void> {
    const { bench, text } = this;
    const missing = Object.keys(exampleAddresses).some(
      (name) => !Object.hasOwn(bench.files.value, name) && text.value.includes(JSON.stringify(name)),
    );
    // where it cannot be had the set says so itself
    const shipped = missing ? await shippedFiles().catch(() => null) : null;
    if (shipped) bench.files.value = { ...shipped, ...bench.files.value };
  }

  /** The document with the files it may refer to. */
  work(): Work {
    return { document: this.value.value, files: this.bench.files.value };
  }

  /** Another tab has saved: taken over where nothing was changed here, else the person is asked at the next save. */
  async #newerElsewhere(): Promise<void> {
    if (this.canUndo.value) await this.#keeper.save(this.work());
    else await this.takeTheirs();
  }
}

const nameOf = (value: unknown): string =>
  typeof value === 'object' && value !== null && 'name' in value && typeof value.name === 'string' ? value.name : '';
