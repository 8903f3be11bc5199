import type { ByteSource } from './byte-access.ts';
import { type ChannelGain, channelMix } from './channel-mix.ts';
import { type Chunk, listChunks, readBytes } from './chunks.ts';
import { type Encoding, type Format, readFormat } from './format.ts';
import { decodeImaBlock, imaFrames } from './ima-adpcm.ts';
import { type Info, readInfo } from './info.ts';
import { type ChannelDecoder, channelDecoder } from './sample-decoder.ts';
import { WavError } from './wav-error.ts';

/** Bytes read at a time, and the longest list of notes read. */
const BUFFER = 65_536;
/** Writers that cannot go back put these lengths, or greater ones, where they do not know it. */
const OPEN_LENGTH = 0x7fff_0000;

/** A WAV file opened for reading; what it holds is read where it is asked for, so memory stays the same however long it is. */
export interface WavFile {
  readonly rate: number;
  readonly channels: number;
  /** frames there are: one sample of each channel */
  readonly frames: number;
  readonly encoding: Encoding;
  readonly sampleBits: number;
  readonly info: Info;
  /** what is amiss with the file and how it was taken, sentences without their stop */
  readonly remarks: readonly string[];
  /** Fills the channels with frames from `frame` on, full scale 1; returns how many there were. */
  readChannels(frame: number, channels: readonly Float64Array[]): number;
  /** The same, mixed to left and right. */
  readStereo(frame: number, left: Float64Array, right: Float64Array): number;
}

/**
 * Opens a WAV file: RIFF, RIFX or RF64; 8 to 32 bits, floating point of 32 or 64, A-law, mu-law or IMA ADPCM; any rate; up to 64 channels.
 *
 * Of a file cut short, or whose lengths are wrong, what is there is read, with a remark; a file without sound in it has zero frames.
 * @throws WavError if it is no WAV file, has no description of its format or no sound chunk, or its format cannot be read
 */
export function openWav(source: ByteSource): WavFile {
  const remarks: string[] = [];
  const remark = (text: string): void => void remarks.push(text);
  const { littleEndian, chunks } = listChunks(source, remark);
  const description = chunks.find(({ name }) => name === 'fmt ');
  const data = chunks.find(({ name }) => name === 'data');
  if (!description)
    throw new WavError('The WAV file', 'it does not say how its samples are written (no fmt chunk)', 'Copy or record it again.');
  if (!data) throw new WavError('The WAV file', 'it ends before the sound begins (no data chunk)', 'Copy or record it again.');
  if (chunks.filter(({ name }) => name === 'data').length > 1) remark('it has more than one sound chunk; the first is read');
  const format = readFormat(readBytes(source, description.at, Math.min(description.length, 64)), littleEndian, remark);
  const frames = framesOf(source, format, data, chunks, littleEndian, remark);
  let info: Info = {};
  for (const { name, at, length } of chunks)
    if (name === 'LIST') {
      const { buffer, byteLength } = readBytes(source, at, Math.min(length, BUFFER));
      info = { ...info, ...readInfo(new Uint8Array(buffer, 0, byteLength), littleEndian) };
    }
  return new Opened(source, format, littleEndian, data.at, data.length, frames, info, remarks);
}

function framesOf(
  source: ByteSource,
  format: Format,
  data: Chunk,
  chunks: readonly Chunk[],
  littleEndian: boolean,
  remark: (text: string) => void,
): number {
  const { blockBytes, blockFrames, channels, rate } = format;
  const count = (bytes: number): number => {
    const whole = Math.floor(bytes / blockBytes);
    const rest = bytes - whole * blockBytes;
    return whole * blockFrames + (blockFrames > 1 ? imaFrames(rest, channels, blockFrames) : 0);
  };
  const seconds = (frames: number): string => `${(frames / rate).toFixed(3)} s`;
  const there = count(data.length);
  if (data.said > data.length) {
    if (data.said >= OPEN_LENGTH) remark('its length was left open when it was written; read to its end');
    else remark(`it is cut short: ${seconds(count(data.said))} were written and ${seconds(there)} are there`);
  } else if (data.length % blockBytes !== 0 && blockFrames === 1) remark('it ends within a frame; the part of a frame is left out');
  if (there === 0) remark('there is no sound in it');
  if (blockFrames === 1) return there;
  // the last block is filled up; how many frames count stands in the fact chunk
  const fact = chunks.find(({ name, length }) => name === 'fact' && length >= 4);
  if (!fact) return there;
  const said = readBytes(source, fact.at, 4).getUint32(0, littleEndian);
  return said > 0 && said < there ? said : there;
}

class Opened implements WavFile {
  readonly rate: number;
  readonly channels: number;
  readonly frames: number;
  readonly encoding: Encoding;
  readonly sampleBits: number;
  readonly info: Info;
  readonly remarks: readonly string[];
  readonly #source: ByteSource;
  readonly #format: Format;
  readonly #littleEndian: boolean;
  readonly #dataAt: number;
  readonly #dataLength: number;
  readonly #buffer: Uint8Array;
  readonly #view: DataView;
  readonly #decode: ChannelDecoder;
  readonly #mix: readonly ChannelGain[];
  /** decoded frames about to be mixed, or of an ADPCM block, and the number of the latter */
  readonly #decoded: readonly Float64Array[];
  #block = -1;

  constructor(
    source: ByteSource,
    format: Format,
    littleEndian: boolean,
    dataAt: number,
    dataLength: number,
    frames: number,
    info: Info,
    remarks: readonly string[],
  ) {
    this.rate = format.rate;
    this.channels = format.channels;
    this.frames = frames;
    this.encoding = format.encoding;
    this.sampleBits = format.encoding === 'ima-adpcm' ? 4 : 8 * format.sampleBytes;
    this.info = info;
    this.remarks = remarks;
    this.#source = source;
    this.#format = format;
    this.#littleEndian = littleEndian;
    this.#dataAt = dataAt;
    this.#dataLength = dataLength;
    this.#buffer = new Uint8Array(Math.max(BUFFER, format.blockBytes));
    this.#view = new DataView(this.#buffer.buffer);
    this.#decode = channelDecoder(format, littleEndian);
    this.#mix = channelMix(format.channels, format.channelMask);
    const atOnce = format.blockFrames > 1 ? format.blockFrames : Math.max(1, Math.floor(BUFFER / format.blockBytes));
    this.#decoded = Array.from({ length: format.channels }, () => new Float64Array(atOnce));
  }

  readChannels(frame: number, channels: readonly Float64Array[]): number {
    const wanted = Math.min(channels[0]!.length, this.frames - frame);
    for (let done = 0; done < wanted; ) {
      const { from, count } = this.#load(frame + done, wanted - done);
      if (count === 0) return done;
      for (let c = 0; c < this.channels; c++) channels[c]!.set(this.#decoded[c]!.subarray(from, from + count), done);
      done += count;
    }
    return Math.max(0, wanted);
  }

  readStereo(frame: number, left: Float64Array, right: Float64Array): number {
    const wanted = Math.min(left.length, this.frames - frame);
    for (let done = 0; done < wanted; ) {
      const { from, count } = this.#load(frame + done, wanted - done);
      if (count === 0) return done;
      for (let n = 0; n < count; n++) {
        let l = 0;
        let r = 0;
        for (let c = 0; c < this.channels; c++) {
          const x = this.#decoded[c]![from + n]!;
          l += x * this.#mix[c]!.left;
          r += x * this.#mix[c]!.right;
        }
        left[done + n] = l;
        right[done + n] = r;
      }
      done += count;
    }
    return Math.max(0, wanted);
  }

  /** Decodes frames from `frame` on; tells where among the decoded they begin and how many there are, up to `wanted`. */
  #load(frame: number, wanted: number): { readonly from: number; readonly count: number } {
    const { blockFrames, blockBytes, sampleBytes } = this.#format;
    if (blockFrames > 1) {
      const block = Math.floor(frame / blockFrames);
      const there = this.#loadBlock(block);
      const from = frame - block * blockFrames;
      return { from, count: Math.max(0, Math.min(wanted, there - from)) };
    }
    const count = Math.min(wanted, this.#decoded[0]!.length);
    const read = this.#source.read(this.#dataAt + frame * blockBytes, this.#buffer.subarray(0, count * blockBytes));
    const frames = Math.floor(read / blockBytes);
    for (let c = 0; c < this.channels; c++) this.#decode(this.#view, c * sampleBytes, blockBytes, this.#decoded[c]!, 0, frames);
    return { from: 0, count: frames };
  }

  #loadBlock(block: number): number {
    const { blockFrames, blockBytes } = this.#format;
    const at = block * blockBytes;
    const length = Math.min(blockBytes, this.#dataLength - at);
    const frames = imaFrames(length, this.channels, blockFrames);
    if (block === this.#block) return frames;
    if (this.#source.read(this.#dataAt + at, this.#buffer.subarray(0, length)) < length) return 0;
    decodeImaBlock(this.#view, this.#littleEndian, frames, this.#decoded);
    this.#block = block;
    return frames;
  }
}
