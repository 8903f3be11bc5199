import type { ByteSource } from './byte-access.ts';
import { fourCharacters } from './text.ts';
import { WavError } from './wav-error.ts';

/** A chunk of a file: where its body begins, and how long it is said to be and is. */
export interface Chunk {
  readonly name: string;
  readonly at: number;
  readonly said: number;
  readonly length: number;
}

export interface ChunkList {
  readonly littleEndian: boolean;
  readonly chunks: readonly Chunk[];
}

/** What a file is that begins so, if it is no WAV file. */
const OTHERS: readonly (readonly [string, string])[] = [
  ['FORM', 'an AIFF file'],
  ['fLaC', 'a FLAC file'],
  ['OggS', 'an Ogg file'],
  ['ID3', 'an MP3 file'],
  ['\u00ff\u00fb', 'an MP3 file'],
  ['\u00ff\u00f3', 'an MP3 file'],
  ['caff', 'a CAF file'],
  ['.snd', 'an AU file'],
  ['{', 'a text file'],
];
/** More chunks than any file has: what follows is not a list of chunks. */
const MOST_CHUNKS = 10_000;
/** A length that says: to be found in the ds64 chunk, or not known when the head was written. */
const OPEN_LENGTH = 0xffffffff;

export function readBytes(source: ByteSource, at: number, length: number): DataView {
  const bytes = new Uint8Array(length);
  return new DataView(bytes.buffer, 0, source.read(at, bytes));
}

/**
 * Lists the chunks of a RIFF, RIFX (big-endian) or RF64 (above 4 GB) file of kind WAVE.
 *
 * Lengths are held against the bytes there are. A chunk of odd length is followed by a byte that does not count; files are met with that forget it.
 * @throws WavError if it is no such file
 * Source: RIFF specification (1991), ch. 2; EBU Tech 3306 (2009) for RF64.
 */
export function listChunks(source: ByteSource, remark: (text: string) => void): ChunkList {
  if (source.size === 0) throw new WavError('The WAV file', 'it is empty', 'Choose another file, or record it again.');
  const head = readBytes(source, 0, 12);
  const form = head.byteLength >= 4 ? fourCharacters(head, 0) : '';
  if (head.byteLength < 12 || !['RIFF', 'RIFX', 'RF64', 'BW64'].includes(form)) throw notWav(head);
  if (fourCharacters(head, 8) !== 'WAVE')
    throw new WavError(
      'The WAV file',
      `it is a RIFF file of kind "${fourCharacters(head, 8).trim()}", not WAVE`,
      'Convert the sound in it to WAV.',
    );
  const littleEndian = form !== 'RIFX';
  const chunks: Chunk[] = [];
  let longData: number | null = null;
  for (let at = 12; at + 8 <= source.size && chunks.length < MOST_CHUNKS; ) {
    const view = readBytes(source, at, 8);
    const name = fourCharacters(view, 0);
    let said = view.getUint32(4, littleEndian);
    if (name === 'data' && said === OPEN_LENGTH && longData !== null) said = longData;
    const rest = source.size - at - 8;
    const open = name === 'data' && said === 0 && !isChunkName(source, at + 8);
    const length = open ? rest : Math.min(said, rest);
    if (name === 'ds64' && length >= 16) longData = Number(readBytes(source, at + 16, 8).getBigUint64(0, littleEndian));
    chunks.push({ name, at: at + 8, said: open && rest > 0 ? OPEN_LENGTH : said, length });
    at = next(source, at + 8, length, remark);
  }
  return { littleEndian, chunks };
}

/** Where the chunk after one of this body begins. */
function next(source: ByteSource, at: number, length: number, remark: (text: string) => void): number {
  const end = at + length;
  if (length % 2 === 0) return end;
  if (isChunkName(source, end + 1) || !isChunkName(source, end)) return end + 1;
  remark('a chunk of odd length is not followed by the byte that should fill it up; read without it');
  return end;
}

/** Whether four printable characters stand there. */
function isChunkName(source: ByteSource, at: number): boolean {
  if (at + 8 > source.size) return false;
  const name = fourCharacters(readBytes(source, at, 4), 0);
  return /^[\x20-\x7e]{4}$/.test(name);
}

function notWav(head: DataView): WavError {
  const start = Array.from({ length: Math.min(4, head.byteLength) }, (_, k) => String.fromCharCode(head.getUint8(k))).join('');
  const known = OTHERS.find(([mark]) => start.startsWith(mark));
  if (known) return new WavError('The WAV file', `it is ${known[1]}`, 'Convert it to WAV.');
  if ('RIFF'.startsWith(start) || start === 'RIFF')
    return new WavError('The WAV file', 'it ends within its head', 'Copy or record it again.');
  return new WavError('The WAV file', 'it does not begin as one, with RIFF and WAVE', 'Convert the sound to WAV.');
}
