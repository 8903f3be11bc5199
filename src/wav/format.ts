import { WavError } from './wav-error.ts';

/** How samples are written. */
export type Encoding = 'unsigned' | 'integer' | 'float' | 'a-law' | 'mu-law' | 'ima-adpcm';

/** What a format chunk says, made consistent. */
export interface Format {
  readonly encoding: Encoding;
  readonly channels: number;
  /** frames a second [Hz] */
  readonly rate: number;
  /** bytes of one sample of one channel; of no meaning in ADPCM */
  readonly sampleBytes: number;
  /** bytes of a frame, or of an ADPCM block */
  readonly blockBytes: number;
  /** frames of a block: 1 except in ADPCM */
  readonly blockFrames: number;
  /** loudspeakers that the channels are for, a bit for each, or null where the file does not say */
  readonly channelMask: number | null;
}

const PCM = 1;
const FLOAT = 3;
const A_LAW = 6;
const MU_LAW = 7;
const IMA_ADPCM = 0x11;
const EXTENSIBLE = 0xfffe;
/** Formats that are met with and not read. */
const OTHERS: Readonly<Record<number, string>> = {
  2: 'Microsoft ADPCM',
  49: 'GSM 6.10',
  80: 'MPEG audio',
  85: 'MP3',
  353: 'Windows Media',
};
/** The last eight bytes of the extensible form's identifier, whose first number is the kind of sample. */
const IDENTIFIER_END = [0x80, 0, 0, 0xaa, 0, 0x38, 0x9b, 0x71];
const MOST_CHANNELS = 64;
const REWRITE = 'Write it again as 16-bit PCM.';

/**
 * Reads the body of a `fmt ` chunk.
 *
 * @param remark - is told what had to be put right
 * @throws WavError if the format is not known here, or contradicts itself
 * Source: RIFF specification (1991), ch. 3; Multiple Channel Audio Data and WAVE Files, Microsoft (2001), for the extensible form.
 */
export function readFormat(view: DataView, littleEndian: boolean, remark: (text: string) => void): Format {
  if (view.byteLength < 14)
    throw new WavError(
      'The format of the WAV file',
      `its description has only ${view.byteLength} bytes, fewer than the 16 it needs`,
      REWRITE,
    );
  const channels = view.getUint16(2, littleEndian);
  const rate = view.getUint32(4, littleEndian);
  const blockBytes = view.getUint16(12, littleEndian);
  const bits = view.byteLength >= 16 ? view.getUint16(14, littleEndian) : (8 * blockBytes) / Math.max(1, channels);
  if (channels < 1 || channels > MOST_CHANNELS)
    throw new WavError(
      'The format of the WAV file',
      `it says ${channels} channels, and 1 to ${MOST_CHANNELS} can be read`,
      'Mix it down to stereo.',
    );
  if (rate === 0) throw new WavError('The format of the WAV file', 'it says 0 samples a second', REWRITE);
  let tag = view.getUint16(0, littleEndian);
  let channelMask: number | null = null;
  if (tag === EXTENSIBLE) {
    if (view.byteLength < 40) throw new WavError('The format of the WAV file', 'the extensible form needs 40 bytes and has fewer', REWRITE);
    // big-endian writers disagree whether the identifier's first number has two bytes or four
    tag = view.getUint16(24, littleEndian) || view.getUint16(26, littleEndian);
    if (IDENTIFIER_END.some((b, k) => view.getUint8(32 + k) !== b))
      throw new WavError('The format of the WAV file', 'its extensible form names a kind of sample that is not known here', REWRITE);
    channelMask = view.getUint32(20, littleEndian) || null;
  }
  if (tag === IMA_ADPCM) return imaFormat(view, littleEndian, channels, rate, blockBytes);
  const encoding = encodingOf(tag, bits);
  const needed = Math.ceil(bits / 8);
  const given = blockBytes / channels;
  const fits = given === needed || (encoding === 'integer' && Number.isInteger(given) && given > needed && given <= 4);
  if (!fits)
    remark(`it says ${blockBytes} bytes a frame, which ${channels} channels of ${bits} bits do not have; read with ${needed * channels}`);
  const sampleBytes = fits ? given : needed;
  return { encoding, channels, rate, sampleBytes, blockBytes: sampleBytes * channels, blockFrames: 1, channelMask };
}

function encodingOf(tag: number, bits: number): Encoding {
  const wrongBits = (what: string, known: string): WavError =>
    new WavError('The format of the WAV file', `it says ${bits} bits a sample, and ${what} have ${known}`, REWRITE);
  switch (tag) {
    case PCM:
      if (!(bits >= 1 && bits <= 32)) throw wrongBits('whole-number samples', '1 to 32');
      return bits <= 8 ? 'unsigned' : 'integer';
    case FLOAT:
      if (bits !== 32 && bits !== 64) throw wrongBits('floating-point samples', '32 or 64');
      return 'float';
    case A_LAW:
    case MU_LAW:
      if (bits !== 8) throw wrongBits('A-law and mu-law samples', '8');
      return tag === A_LAW ? 'a-law' : 'mu-law';
    default:
      throw new WavError(
        'The format of the WAV file',
        `its samples are ${OTHERS[tag] ?? `of kind 0x${tag.toString(16).padStart(4, '0')}`}, which cannot be read here`,
        REWRITE,
      );
  }
}

function imaFormat(view: DataView, littleEndian: boolean, channels: number, rate: number, blockBytes: number): Format {
  // each channel has a head of 4 bytes with one sample, then two samples a byte, eight together
  const body = blockBytes / channels - 4;
  if (!(Number.isInteger(body) && body >= 0 && body % 4 === 0))
    throw new WavError('The format of the WAV file', `IMA ADPCM blocks of ${blockBytes} bytes cannot hold ${channels} channels`, REWRITE);
  const most = 1 + 2 * body;
  const said = view.byteLength >= 20 ? view.getUint16(18, littleEndian) : most;
  const blockFrames = said >= 1 && said <= most ? said : most;
  return { encoding: 'ima-adpcm', channels, rate, sampleBytes: 1, blockBytes, blockFrames, channelMask: null };
}
