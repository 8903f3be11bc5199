/** One end of a line to another thread, whatever kind of thread it is. */
export interface Port {
  /** @param transfer - buffers that go over and are empty here afterwards */
  post(message: unknown, transfer: readonly ArrayBuffer[]): void;
  onMessage(handler: (message: unknown) => void): void;
  /** the other end is gone, or cannot be understood any more */
  onDeath(handler: (reason: string) => void): void;
  /** of the end that started the thread: ends it */
  close(): void;
}

/** A Web Worker, or inside one its global scope. */
export interface WebEnd {
  postMessage(message: unknown, transfer: ArrayBuffer[]): void;
  addEventListener(type: string, handler: (event: object) => void): void;
  terminate?(): void;
  close?(): void;
}

export function webPort(end: WebEnd): Port {
  return {
    post: (message, transfer) => end.postMessage(message, [...transfer]),
    onMessage: (handler) => end.addEventListener('message', (e) => handler('data' in e ? e.data : undefined)),
    onDeath: (handler) => {
      end.addEventListener('error', (e) => handler('message' in e && e.message ? String(e.message) : 'it could not be loaded'));
      end.addEventListener('messageerror', () => handler('a message could not be read'));
    },
    close: () => (end.terminate ? end.terminate() : end.close?.()),
  };
}

/** A worker of worker_threads, its parentPort inside one, or either port of a channel. */
export interface NodeEnd {
  postMessage(message: unknown, transfer: ArrayBuffer[]): void;
  on(type: string, handler: (value: unknown) => void): unknown;
  terminate?(): unknown;
  close?(): void;
}

export function nodePort(end: NodeEnd): Port {
  return {
    post: (message, transfer) => end.postMessage(message, [...transfer]),
    onMessage: (handler) => end.on('message', handler),
    onDeath: (handler) => {
      end.on('error', (e) => handler(e instanceof Error ? e.message : String(e)));
      end.on('messageerror', () => handler('a message could not be read'));
      end.on('exit', (code) => handler(`it ended with code ${String(code)}`));
      end.on('close', () => handler('the line was closed'));
    },
    close: () => void (end.terminate ? end.terminate() : end.close?.()),
  };
}
