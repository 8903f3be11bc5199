import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { JobTable } from '#jobs';
import type { Client } from '#rpc';
import { fieldAt, type Problem } from '#set-file';
import type { LiveSound } from '../audio/live-sound.ts';
import { exampleAddresses } from '../shipped-files.ts';
import { type Path, withValue } from './edit.ts';
import { Workbench } from './workbench.ts';

export type Light = 'auto' | 'day' | 'night';

/** The document as the person has it, with its past, and what may be done with it as a whole. */
export class Desk {
  readonly bench: Workbench;
  /** the document as JSON */
  readonly value: ReadonlySignal<unknown>;
  readonly text: ReadonlySignal<string>;
  readonly name: ReadonlySignal<string>;
  readonly canUndo: ReadonlySignal<boolean>;
  readonly canRedo: ReadonlySignal<boolean>;
  /** something the person should know that is no fault of the set */
  readonly notice = signal<string | null>(null);
  readonly light = signal<Light>('auto');
  readonly #past = signal<readonly unknown[]>([]);
  readonly #now = signal<unknown>({});
  readonly #future = signal<readonly unknown[]>([]);
  #drag: string | null = null;

  constructor(client: Client<JobTable>) {
    this.value = this.#now;
    this.text = computed(() => JSON.stringify(this.#now.value, null, 2));
    this.name = computed(() => nameOf(this.#now.value));
    this.canUndo = computed(() => this.#past.value.length > 0);
    this.canRedo = computed(() => this.#future.value.length > 0);
    this.bench = new Workbench(this.text, client);
  }

  edit(path: Path, value: unknown, drag: string | null = null): void {
    this.#put(withValue(this.#now.value, path, value), drag);
  }

  undo(): void {
    const last = this.#past.value.at(-1);
    if (last === undefined) return;
    this.#future.value = [this.#now.value, ...this.#future.value];
    this.#past.value = this.#past.value.slice(0, -1);
    this.#set(last);
  }

  redo(): void {
    const [next, ...rest] = this.#future.value;
    if (next === undefined) return;
    this.#past.value = [...this.#past.value, this.#now.value];
    this.#future.value = rest;
    this.#set(next);
  }

  problemsAt(path: Path): readonly Problem[] {
    const own = path.reduce<string>(
      (text, key) => (typeof key === 'number' ? `${text}[${key}]` : text === '' ? key : `${text}.${key}`),
      '',
    );
    return this.bench.problems.value.filter((p) => p.path === own);
  }

  fieldAt(path: Path): ReturnType<typeof fieldAt> {
    return fieldAt(this.#now.value, path);
  }

  async adopt(key: string): Promise<void> {
    const answer = await this.bench.ask('adopt', 'adopt', { document: this.bench.document.value, station: this.bench.station.value, key });
    if (answer?.ok) this.#put(JSON.parse(answer.value), null);
  }

  async openExample(name: string): Promise<void> {
    const files = await this.#shipped();
    const text = files[name];
    if (text === undefined) return;
    this.bench.files.value = files;
    this.open(text);
  }

  /** A document takes the place of the one there was, which can be had back. */
  open(text: string): void {
    try {
      this.#put(JSON.parse(text), null);
      this.bench.station.value = 0;
    } catch (e) {
      this.notice.value = `That file is not JSON: ${(e as Error).message}. What you had is still here.`;
    }
  }

  async openFiles(files: readonly File[]): Promise<void> {
    const texts = await Promise.all(files.map(async (f) => [f.name, await f.text()] as const));
    this.bench.files.value = { ...this.bench.files.value, ...Object.fromEntries(texts) };
    const set = texts.find(([, text]) => /"tank"/.test(text)) ?? texts[0];
    if (set) this.open(set[1]);
  }

  async play(sound: LiveSound): Promise<void> {
    const shown = this.bench.shown.value;
    if (!shown || shown.angle === null) {
      this.notice.value = 'The dial does not reach this station, so there is nothing to hear.';
      return;
    }
    const { text, files = {} } = this.bench.document.value;
    await sound.start({
      text,
      files,
      station: shown.name,
      angle: this.bench.hand.value ?? shown.angle,
      sent: { kind: 'own' },
      with: { neighbours: false, room: true, hearingLimit: true, noise: true },
      makeUpGain: 20,
    });
  }

  changeLight(): void {
    this.light.value = ({ auto: 'day', day: 'night', night: 'auto' } as const)[this.light.value];
  }

  async share(): Promise<void> {
    await Promise.resolve();
  }

  get fileName(): string {
    return this.name.value.toLowerCase().replaceAll(/[^\p{L}\p{N}]+/gu, '-') || 'set';
  }

  #put(value: unknown, drag: string | null): void {
    if (drag === null || drag !== this.#drag) this.#past.value = [...this.#past.value, this.#now.value];
    this.#drag = drag;
    this.#future.value = [];
    this.#set(value);
  }

  #set(value: unknown): void {
    this.bench.hand.value = null;
    this.#now.value = value;
  }

  async #shipped(): Promise<Readonly<Record<string, string>>> {
    const entries = await Promise.all(
      Object.entries(exampleAddresses).map(async ([name, address]) => [name, await (await fetch(address)).text()] as const),
    );
    return Object.fromEntries(entries);
  }
}

const nameOf = (value: unknown): string =>
  typeof value === 'object' && value !== null && 'name' in value && typeof value.name === 'string' ? value.name : '';
