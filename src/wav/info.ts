import { decodeText, encodeText, fourCharacters } from './text.ts';

/** Notes in a file, by their four-letter names: ICMT comment, INAM title, ISFT program that wrote it, IART artist, ICRD date. */
export type Info = Readonly<Record<string, string>>;

/** Notes of a LIST chunk, without its head; nothing if the list is of another kind. */
export function readInfo(bytes: Uint8Array, littleEndian: boolean): Info {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const info: Record<string, string> = {};
  if (bytes.length < 4 || fourCharacters(view, 0) !== 'INFO') return info;
  for (let at = 4; at + 8 <= bytes.length; ) {
    const length = Math.min(view.getUint32(at + 4, littleEndian), bytes.length - at - 8);
    info[fourCharacters(view, at)] = decodeText(bytes.subarray(at + 8, at + 8 + length));
    at += 8 + length + (length & 1);
  }
  return info;
}

/** A whole LIST chunk of notes; each text ends in a zero, as the standard asks. Source: RIFF, Microsoft and IBM, Multimedia Programming Interface and Data Specifications 1.0 (1991), ch. 2. */
export function infoChunk(info: Info): Uint8Array {
  const parts = Object.entries(info).map(([name, text]) => ({ name, bytes: encodeText(text) }));
  const padded = (length: number): number => length + 1 + ((length + 1) & 1);
  const size = 12 + parts.reduce((sum, { bytes }) => sum + 8 + padded(bytes.length), 0);
  const out = new Uint8Array(size);
  const view = new DataView(out.buffer);
  const head = (at: number, name: string, length: number): void => {
    out.set(encodeText(name), at);
    view.setUint32(at + 4, length, true);
  };
  head(0, 'LIST', size - 8);
  out.set(encodeText('INFO'), 8);
  let at = 12;
  for (const { name, bytes } of parts) {
    head(at, name, bytes.length + 1);
    out.set(bytes, at + 8);
    at += 8 + padded(bytes.length);
  }
  return out;
}
