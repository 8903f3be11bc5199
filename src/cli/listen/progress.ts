import { progress } from '../progress.ts';

/** Work shorter than this is done without a word [ms]. */
const SILENT = 500;

/** How far long work is, and about how long it will take; on the error channel of a terminal, nothing where nobody looks. */
export class Progress {
  readonly #doing: string;
  readonly #start = performance.now();
  readonly #line = progress();

  constructor(doing: string) {
    this.#doing = doing;
  }

  /** @param share - of the work that is done, 0 to 1 */
  at(share: number): void {
    const gone = performance.now() - this.#start;
    if (gone < SILENT) return;
    const left = share > 0 ? `, about ${Math.ceil((gone * (1 - share)) / share / 1e3)} s left` : '';
    this.#line.show(`${this.#doing}: ${Math.floor(100 * share)} %${left} (Ctrl-C stops)`);
  }

  done(): void {
    this.#line.clear();
  }
}
