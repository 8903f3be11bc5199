/** Parts of files, put together by hand in the tests. */
export const text = (s: string): Uint8Array => Uint8Array.from(s, (c) => c.charCodeAt(0));
export const u16 = (...v: number[]): Uint8Array => Uint8Array.from(v.flatMap((x) => [x & 255, (x >> 8) & 255]));
export const u32 = (...v: number[]): Uint8Array =>
  Uint8Array.from(v.flatMap((x) => [x & 255, (x >>> 8) & 255, (x >>> 16) & 255, (x >>> 24) & 255]));
export const join = (...parts: Uint8Array[]): Uint8Array => Uint8Array.from(parts.flatMap((p) => Array.from(p)));

/** A chunk; its length may be told wrong, and the byte that fills it up be left out. */
export function chunk(name: string, body: Uint8Array, { said = body.length, pad = body.length % 2 === 1 } = {}): Uint8Array {
  return join(text(name), u32(said), body, pad ? Uint8Array.of(0) : new Uint8Array());
}

export const riff = (...chunks: Uint8Array[]): Uint8Array => {
  const body = join(text('WAVE'), ...chunks);
  return join(text('RIFF'), u32(body.length), body);
};

/** Format chunk of 16 bytes. */
export const fmt = (tag: number, channels: number, rate: number, bits: number, blockBytes = (channels * bits) / 8): Uint8Array =>
  chunk('fmt ', join(u16(tag, channels), u32(rate, rate * blockBytes), u16(blockBytes, bits)));
