/** What browsers and Node both have, and this needs; the rest of either is out of sight here. */

/** An AbortSignal, as far as it is listened to. */
export interface Signal {
  readonly aborted: boolean;
  addEventListener(type: 'abort', listener: () => void): void;
  removeEventListener(type: 'abort', listener: () => void): void;
}

interface Controller {
  readonly signal: Signal;
  abort(): void;
}

interface TurnPort {
  onmessage: (() => void) | null;
  postMessage(message: unknown): void;
  close(): void;
}

interface Globals {
  readonly AbortController: new () => Controller;
  readonly MessageChannel: new () => { readonly port1: TurnPort; readonly port2: TurnPort };
  setTimeout(run: () => void, milliseconds: number): unknown;
  clearTimeout(timer: unknown): void;
}

const globals = globalThis as unknown as Globals;

export const controller = (): Controller => new globals.AbortController();

/** Runs something later, unless the function that comes back is called before. */
export function later(run: () => void, milliseconds: number): () => void {
  const timer = globals.setTimeout(run, milliseconds);
  return () => globals.clearTimeout(timer);
}

/** Lets queued messages in. A timer would do it too, but browsers keep one waiting for 4 ms. */
export function turn(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new globals.MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
}
