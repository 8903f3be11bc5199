import { signal } from '@preact/signals';
import { REVIVERS } from '#jobs';
import { Cancelled, type Client, connect, Latest, webPort } from '#rpc';
import type { Problem } from '#set-file';
import type { PaperName, SheetPage } from '#sheet';
import type { SheetGiven, SheetJobs } from '../sheet/sheet-jobs.ts';

/** What can be shown of a sheet. */
export type SheetState =
  | { readonly kind: 'pages'; readonly pages: readonly SheetPage[] }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] }
  | { readonly kind: 'failed'; readonly why: string };

/** Where letters are of this size, sheets are too. */
const LETTER = /-(US|CA|MX|PH|CL|CO|VE)\b/;

/** Sheets are laid out in a thread of their own, so that the dial stays free. */
export class SheetMaking {
  readonly paper = signal<PaperName>(LETTER.test(navigator.language) ? 'letter' : 'a4');
  /** the last that was laid out */
  readonly state = signal<SheetState | null>(null);
  /** what is under way */
  readonly busy = signal<'pages' | 'file' | null>(null);
  readonly #client: Client<SheetJobs>;
  readonly #latest = new Latest();
  /** what the state is of; null while that is being worked out */
  #laidOut: SheetGiven | null = null;

  constructor() {
    this.#client = connect<SheetJobs>(
      () => webPort(new Worker(new URL('../sheet/sheet.worker.ts', import.meta.url), { type: 'module' })),
      REVIVERS,
    );
  }

  /** Lays the pages out, unless they are; what a later change overtakes is dropped. */
  async layOut(given: SheetGiven): Promise<void> {
    if (this.#laidOut && same(this.#laidOut, given)) return;
    this.#laidOut = null;
    this.busy.value = 'pages';
    try {
      const answer = await this.#latest.run('pages', (abort) => this.#client.call('pages', given, { signal: abort }));
      this.state.value = answer.ok ? { kind: 'pages', pages: answer.value } : { kind: 'refused', problems: answer.problems };
      this.#laidOut = given;
    } catch (e) {
      // another call has taken its place and will end the waiting
      if (e instanceof Cancelled) return;
      this.state.value = { kind: 'failed', why: e instanceof Error ? e.message : String(e) };
    }
    this.busy.value = null;
  }

  /** The PDF file; null where none can be made, which the state then tells. */
  async file(given: SheetGiven): Promise<Uint8Array<ArrayBuffer> | null> {
    this.busy.value = 'file';
    try {
      const answer = await this.#client.call('file', given);
      if (answer.ok) return answer.value;
      this.state.value = { kind: 'refused', problems: answer.problems };
    } catch (e) {
      this.#laidOut = null;
      this.state.value = { kind: 'failed', why: e instanceof Error ? e.message : String(e) };
    } finally {
      this.busy.value = null;
    }
    return null;
  }
}

const same = (a: SheetGiven, b: SheetGiven): boolean => a.document === b.document && a.station === b.station && a.paper === b.paper;

let made: SheetMaking | null = null;
/** One for all visits to the view: what was laid out last is still there. */
export function sheetMaking(): SheetMaking {
  made ??= new SheetMaking();
  return made;
}
