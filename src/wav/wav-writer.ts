import type { ByteSink } from './byte-access.ts';
import { type Info, infoChunk } from './info.ts';
import { encodeText } from './text.ts';
import { WavError } from './wav-error.ts';

/** How samples are to be written: whole numbers of 16 or 24 bits, or floating point of 32. */
export type WavEncoding = '16-bit' | '24-bit' | 'float';

export interface WavWriting {
  readonly rate: number;
  readonly channels: 1 | 2;
  readonly encoding: WavEncoding;
}

/** What was written. */
export interface WavWritten {
  readonly frames: number;
  readonly bytes: number;
  /** samples beyond full scale, written as full scale; none in floating point */
  readonly clipped: number;
}

const BYTES: Readonly<Record<WavEncoding, number>> = { '16-bit': 2, '24-bit': 3, float: 4 };
/** Frames encoded at a time. */
const CHUNK = 4096;
/** Length of a file still being written. */
const OPEN_LENGTH = 0xffff_ffff;
/** A RIFF file counts its bytes in 32 bits; notes at the end have their room. */
const MOST_BYTES = 2 ** 32 - 2 ** 20;

/**
 * Writes a WAV file piece by piece; its lengths are put into the head at the end.
 *
 * Whole numbers are the nearest to 2^15 x or 2^23 x, without dither; full scale 1.
 * Source: RIFF specification (1991), chs. 2 and 3.
 */
export class WavWriter {
  readonly #sink: ByteSink;
  readonly #writing: WavWriting;
  readonly #frameBytes: number;
  readonly #headBytes: number;
  readonly #chunk: DataView;
  #frames = 0;
  #clipped = 0;

  /** @throws WavError if the rate is no whole number of samples a second */
  constructor(sink: ByteSink, writing: WavWriting) {
    const { rate, channels, encoding } = writing;
    if (!(Number.isInteger(rate) && rate >= 1 && rate < 2 ** 32))
      throw new WavError('The WAV file to be written', `${rate} samples a second is no whole number from 1 on`, 'Choose 48000.');
    this.#sink = sink;
    this.#writing = writing;
    this.#frameBytes = BYTES[encoding] * channels;
    this.#chunk = new DataView(new ArrayBuffer(CHUNK * this.#frameBytes));
    const head = this.#head(0, 0);
    this.#headBytes = head.length;
    // so that a file cut off in writing is one of open length
    sink.write(0, this.#head(OPEN_LENGTH, OPEN_LENGTH));
  }

  /**
   * Writes frames; of a mono file only the first channel.
   *
   * @throws WavError if a sample is not a number, or the file would be longer than 4 GB
   */
  write(left: Float64Array, right: Float64Array): void {
    if (this.#headBytes + (this.#frames + left.length) * this.#frameBytes > MOST_BYTES)
      throw new WavError(
        'The WAV file to be written',
        'it would be longer than the 4 GB that its head can count',
        'Write a shorter piece, or at 16 bits.',
      );
    for (let from = 0; from < left.length; from += CHUNK) {
      const count = Math.min(CHUNK, left.length - from);
      this.#encode(left, from, count, 0);
      if (this.#writing.channels === 2) this.#encode(right, from, count, BYTES[this.#writing.encoding]);
      const at = this.#headBytes + this.#frames * this.#frameBytes;
      this.#sink.write(at, new Uint8Array(this.#chunk.buffer, 0, count * this.#frameBytes));
      this.#frames += count;
    }
  }

  /** Puts the notes behind the sound and the lengths into the head. */
  finish(info: Info = {}): WavWritten {
    const dataBytes = this.#frames * this.#frameBytes;
    let end = this.#headBytes + dataBytes;
    if (dataBytes % 2) {
      this.#sink.write(end, new Uint8Array(1));
      end++;
    }
    if (Object.keys(info).length > 0) {
      const notes = infoChunk(info);
      this.#sink.write(end, notes);
      end += notes.length;
    }
    this.#sink.write(0, this.#head(end - 8, dataBytes));
    return { frames: this.#frames, bytes: end, clipped: this.#clipped };
  }

  #encode(x: Float64Array, from: number, count: number, offset: number): void {
    const { encoding } = this.#writing;
    const view = this.#chunk;
    const scale = encoding === '16-bit' ? 0x8000 : 0x800000;
    for (let n = 0, at = offset; n < count; n++, at += this.#frameBytes) {
      const value = x[from + n]!;
      if (!Number.isFinite(value))
        throw new WavError(
          'The WAV file to be written',
          `sample ${this.#frames + n} is ${value}`,
          'This is a fault of the program; please report it.',
        );
      if (encoding === 'float') {
        view.setFloat32(at, value, true);
        continue;
      }
      const rounded = Math.round(value * scale);
      // +1 is one step above the greatest whole number, and full scale all the same
      if (rounded > scale || rounded < -scale) this.#clipped++;
      const held = Math.max(-scale, Math.min(scale - 1, rounded));
      view.setInt16(at, held, true);
      if (encoding === '24-bit') view.setInt8(at + 2, held >> 16);
    }
  }

  #head(riffBytes: number, dataBytes: number): Uint8Array {
    const { rate, channels, encoding } = this.#writing;
    const float = encoding === 'float';
    const bytes = new Uint8Array(float ? 58 : 44);
    const view = new DataView(bytes.buffer);
    bytes.set(encodeText('RIFF'), 0);
    view.setUint32(4, riffBytes, true);
    bytes.set(encodeText('WAVEfmt '), 8);
    view.setUint32(16, float ? 18 : 16, true);
    view.setUint16(20, float ? 3 : 1, true);
    view.setUint16(22, channels, true);
    view.setUint32(24, rate, true);
    view.setUint32(28, rate * this.#frameBytes, true);
    view.setUint16(32, this.#frameBytes, true);
    view.setUint16(34, 8 * BYTES[encoding], true);
    let at = 36;
    if (float) {
      // formats other than PCM say how much more they say, nothing, and how many frames there are
      bytes.set(encodeText('fact'), 38);
      view.setUint32(42, 4, true);
      view.setUint32(46, this.#frames, true);
      at = 50;
    }
    bytes.set(encodeText('data'), at);
    view.setUint32(at + 4, dataBytes, true);
    return bytes;
  }
}
