/** Work shorter than this is done without a word [ms], and the line is written anew so often. */
const SILENT = 500;
const OFTEN = 100;

/** How far long work is, on the error channel of a terminal; nothing where nobody looks. */
export class Progress {
  readonly #doing: string;
  readonly #start = performance.now();
  #shown = Number.NEGATIVE_INFINITY;
  #length = 0;

  constructor(doing: string) {
    this.#doing = doing;
  }

  /** @param share - of the work that is done, 0 to 1 */
  at(share: number): void {
    const now = performance.now();
    const gone = now - this.#start;
    if (!process.stderr.isTTY || gone < SILENT || now - this.#shown < OFTEN) return;
    this.#shown = now;
    const left = share > 0 ? `, about ${Math.ceil((gone * (1 - share)) / share / 1e3)} s left` : '';
    this.#write(`${this.#doing}: ${Math.floor(100 * share)} %${left} (Ctrl-C stops)`);
  }

  /** Wipes the line. */
  done(): void {
    if (this.#length > 0) this.#write('');
  }

  #write(text: string): void {
    process.stderr.write(`\r${text.padEnd(this.#length)}${text === '' ? '\r' : ''}`);
    this.#length = text.length;
  }
}
