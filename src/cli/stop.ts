const SIGNALS = ['SIGINT', 'SIGTERM'] as const;

/** A stop asked for by Ctrl-C, or by a request to end; long work looks at it between its steps. */
export class Stop {
  #asked = false;
  readonly #listener = (): void => {
    this.#asked = true;
  };

  constructor() {
    for (const signal of SIGNALS) process.on(signal, this.#listener);
  }

  get asked(): boolean {
    return this.#asked;
  }

  /** Lets signals in that came meanwhile. */
  breathe(): Promise<void> {
    return new Promise((resolve) => setImmediate(resolve));
  }

  /** Ctrl-C ends the program again, as usual. */
  release(): void {
    for (const signal of SIGNALS) process.off(signal, this.#listener);
  }
}
