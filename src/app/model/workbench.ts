import { computed, effect, type ReadonlySignal, signal, untracked } from '@preact/signals';
import type { Advised, Answer, DialPicture, Document, Evaluated, JobTable, KnownDocument, Outline, ReadAhead, StationResult } from '#jobs';
import { Cancelled, type Client, Latest, WorkerDied } from '#rpc';
import type { Problem } from '#set-file';

/** What can be opened below the path. */
export const VIEWS = [
  'place',
  'aerial',
  'tank',
  'slope',
  'detector',
  'phones',
  'ear',
  'listen',
  'drawer',
  'find',
  'tolerance',
  'sheet',
  'compare',
  'file',
] as const;
export type View = (typeof VIEWS)[number];

/** Text of a document that is not there yet. */
const NOTHING = 'null';

/** A set on the bench: the document is what the person writes, everything else follows from it. */
export class Workbench {
  /** the set file as JSON text, as it is now */
  readonly text: ReadonlySignal<string>;
  /** files that a document may refer to, by name */
  readonly files = signal<Readonly<Record<string, string>>>({});
  /** a document that the build has read */
  readonly known = signal<KnownDocument | null>(null);
  readonly station = signal(0);
  /** where a hand has left the dial [rad]; null: where it is best for the station */
  readonly hand = signal<number | null>(null);
  /** null until something is opened */
  readonly view = signal<View | null>(null);

  readonly problems = signal<readonly Problem[]>([]);
  /** what the document holds */
  readonly outline = signal<Outline | null>(null);
  /** the picked station, the dial set afresh; the last that could be worked out */
  readonly best = signal<StationResult | null>(null);
  /** all stations likewise */
  readonly result = signal<Evaluated | null>(null);
  /** the picked station where the hand has left the dial */
  readonly turned = signal<StationResult | null>(null);
  readonly dial = signal<DialPicture | null>(null);
  /** changes that help, the last that were worked out */
  readonly advice = signal<Advised | null>(null);
  /** station that the advice was worked out for */
  readonly #advised = signal<StationResult | null>(null);
  /** the advice is for the set as it is now */
  readonly adviceHolds: ReadonlySignal<boolean>;
  /** the verdict on the station as it is shown; with the best change in it as soon as that is known */
  readonly sentence: ReadonlySignal<string | null>;
  /** something is being worked out that takes longer than a blink; share done */
  readonly working = signal<{ readonly what: string; readonly done: number } | null>(null);
  /** work that failed for no fault of the document's */
  readonly fault = signal<string | null>(null);

  readonly document: ReadonlySignal<Document>;
  /** the picked station as the screen shows it */
  readonly shown: ReadonlySignal<StationResult | null>;
  readonly #client: Client<JobTable>;
  readonly #latest = new Latest();
  #run = 0;

  constructor(text: ReadonlySignal<string>, client: Client<JobTable>) {
    this.text = text;
    this.#client = client;
    this.document = computed(() => {
      const [text, files] = [this.text.value, this.files.value];
      return { text, files, ahead: aheadOf(this.known.value, text, files) };
    });
    this.shown = computed(() => this.turned.value ?? this.best.value);
    this.adviceHolds = computed(() => this.best.value !== null && this.best.value === this.#advised.value);
    this.sentence = computed(() => {
      const [shown, advice] = [this.shown.value, this.advice.value];
      // advice for another state of the set says nothing of this one
      return shown !== null && shown === this.#advised.value ? (advice?.sentence ?? shown.sentence) : (shown?.sentence ?? null);
    });
    // every change of document or station is worked out; what it supersedes is dropped
    effect(() => {
      const [document, station] = [this.document.value, this.station.value];
      untracked(() => void this.#all(document, station));
    });
    effect(() => {
      const [document, station, angle] = [this.document.value, this.station.value, this.hand.value];
      untracked(() => void this.#turn(document, station, angle));
    });
  }

  /** Asks the thread that works things out; a later question under the same key takes the place of an earlier one. */
  ask<K extends keyof JobTable & string>(
    key: string,
    job: K,
    given: Parameters<JobTable[K]>[0],
    running: 'cancel' | 'finish' = 'cancel',
  ): Promise<Awaited<ReturnType<JobTable[K]>> | null> {
    const call = this.#latest.run(
      key,
      (abort) => {
        let shown = false;
        const began = performance.now();
        const options = {
          signal: abort,
          onProgress: (done: number) => {
            if (performance.now() - began < 500) return;
            shown = true;
            this.working.value = { what: key, done };
          },
        };
        return this.#client
          .call(job, given, options)
          .catch((e: unknown) => {
            // a thread that died is started anew; what it was at is asked once more
            if (!(e instanceof WorkerDied)) throw e;
            return this.#client.call(job, given, options);
          })
          .finally(() => {
            if (shown) this.working.value = null;
          });
      },
      running,
    );
    return call.then(
      (result) => {
        this.fault.value = null;
        return result as Awaited<ReturnType<JobTable[K]>>;
      },
      (e: unknown) => {
        if (!(e instanceof Cancelled)) this.fault.value = e instanceof Error ? e.message : String(e);
        return null;
      },
    );
  }

  /** The picked station first, since it is what the person looks at; then the others, the dial, and what would help. What a later change overtakes is dropped. */
  async #all(document: Document, station: number): Promise<void> {
    if (document.text === NOTHING) return;
    const run = ++this.#run;
    const glance = await this.ask('glance', 'glance', { document, station }, 'finish');
    if (!this.#taken(glance)) return;
    this.outline.value = glance.value.outline;
    this.best.value = glance.value.station;
    if (run !== this.#run) return;
    if (glance.value.station.index !== station) {
      this.station.value = glance.value.station.index;
      return;
    }
    const dial = await this.ask('dial', 'dial', { document, station });
    if (dial?.ok) this.dial.value = dial.value;
    const all = run === this.#run ? await this.ask('evaluate', 'evaluate', { document }) : null;
    if (!this.#taken(all)) return;
    this.result.value = all.value;
    const advice = run === this.#run ? await this.ask('advice', 'advise', { document, station }) : null;
    if (!advice?.ok) return;
    this.advice.value = advice.value;
    this.#advised.value = glance.value.station;
  }

  async #turn(document: Document, station: number, angle: number | null): Promise<void> {
    if (angle === null) {
      this.turned.value = null;
      return;
    }
    const answer = await this.ask('turn', 'evaluate', { document, station, angle }, 'finish');
    if (answer?.ok && this.hand.peek() !== null) this.turned.value = answer.value.stations[0] ?? null;
  }

  #taken<T>(answer: Answer<T> | null): answer is Answer<T> & { readonly ok: true } {
    if (answer === null) return false;
    this.problems.value = answer.ok ? [] : answer.problems;
    return answer.ok;
  }
}

/** What a document comes to, where it is the known one to the letter. */
function aheadOf(known: KnownDocument | null, text: string, files: Readonly<Record<string, string>>): ReadAhead | undefined {
  if (!known || text !== known.text) return undefined;
  return Object.entries(known.files).every(([name, its]) => files[name] === its) ? known.ahead : undefined;
}
