/** What browsers and Node both have, and packing needs; the rest of either is out of sight here. */
interface Through {
  readonly readable: { getReader(): Reader };
  readonly writable: { getWriter(): { write(chunk: Uint8Array): Promise<void>; close(): Promise<void> } };
}
interface Reader {
  read(): Promise<{ readonly done: boolean; readonly value?: Uint8Array }>;
  cancel(): Promise<void>;
}
interface Globals {
  readonly CompressionStream: new (format: 'deflate-raw') => Through;
  readonly DecompressionStream: new (format: 'deflate-raw') => Through;
  readonly TextEncoder: new () => { encode(text: string): Uint8Array };
  readonly TextDecoder: new (label: string, options: { readonly fatal: true }) => { decode(data: Uint8Array): string };
  readonly btoa: (binary: string) => string;
  readonly atob: (coded: string) => string;
}
const globals = globalThis as unknown as Globals;

/** A text made short, in characters that a link can carry (base64url, RFC 4648 section 5; deflate, RFC 1951). */
export async function packed(text: string): Promise<string> {
  const { CompressionStream, TextEncoder } = globals;
  const data = await through(new CompressionStream('deflate-raw'), new TextEncoder().encode(text), Number.POSITIVE_INFINITY);
  let binary = '';
  for (const byte of data!) binary += String.fromCharCode(byte);
  return globals.btoa(binary).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

/**
 * The text again; null as soon as it is more than a limit [bytes].
 *
 * @throws Error of whatever kind for what was not packed, or was changed on its way
 */
export async function unpacked(coded: string, limit: number): Promise<string | null> {
  const { DecompressionStream, TextDecoder } = globals;
  const data = Uint8Array.from(globals.atob(coded.replaceAll('-', '+').replaceAll('_', '/')), (c) => c.charCodeAt(0));
  const plain = await through(new DecompressionStream('deflate-raw'), data, limit);
  return plain && new TextDecoder('utf-8', { fatal: true }).decode(plain);
}

/** All that comes out of a stream, or null as soon as it is more than a limit [bytes]. */
async function through(stream: Through, input: Uint8Array, limit: number): Promise<Uint8Array | null> {
  const writer = stream.writable.getWriter();
  // a fault in the input comes out at the reading end as well, where it is met
  void writer.write(input).catch(() => {});
  void writer.close().catch(() => {});
  const reader = stream.readable.getReader();
  const chunks: Uint8Array[] = [];
  let length = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done || !value) break;
    length += value.length;
    if (length > limit) {
      await reader.cancel().catch(() => {});
      return null;
    }
    chunks.push(value);
  }
  const out = new Uint8Array(length);
  let at = 0;
  for (const chunk of chunks) {
    out.set(chunk, at);
    at += chunk.length;
  }
  return out;
}
