/** Bytes that can be read anywhere: a file on disk, a file chosen in a browser, an array. */
export interface ByteSource {
  readonly size: number;
  /** Fills `into` from byte `at` on and returns how many bytes there were, fewer only at the end. */
  read(at: number, into: Uint8Array): number;
}

/** Takes bytes anywhere; writes may go back to the beginning. */
export interface ByteSink {
  write(at: number, bytes: Uint8Array): void;
}

/** An array as a source. */
export const bytesSource = (bytes: Uint8Array): ByteSource => ({
  size: bytes.length,
  read(at, into) {
    const part = bytes.subarray(at, at + into.length);
    into.set(part);
    return part.length;
  },
});

/** A sink in memory that grows as it is written. */
export class MemorySink implements ByteSink {
  #room = new Uint8Array(65_536);
  #size = 0;

  write(at: number, bytes: Uint8Array): void {
    const end = at + bytes.length;
    if (end > this.#room.length) {
      const larger = new Uint8Array(Math.max(end, 2 * this.#room.length));
      larger.set(this.#room);
      this.#room = larger;
    }
    this.#room.set(bytes, at);
    this.#size = Math.max(this.#size, end);
  }

  /** All that was written. */
  bytes(): Uint8Array<ArrayBuffer> {
    return this.#room.slice(0, this.#size);
  }
}
