import { A_LAW, MU_LAW } from './companding.ts';
import type { Format } from './format.ts';

/** Decodes one channel: samples at `from`, `from + stride` and so on, into out[at] to out[at + count - 1], full scale 1. */
export type ChannelDecoder = (view: DataView, from: number, stride: number, out: Float64Array, at: number, count: number) => void;

/**
 * Decoder of samples that each stand by themselves.
 *
 * Whole numbers of n bytes are divided by 2^(8 n - 1); those of fewer bits stand at the top of their bytes. 8 bits are unsigned, 128 is zero.
 * Floating-point samples are taken as they are; what is no finite number is taken as zero.
 */
export function channelDecoder({ encoding, sampleBytes }: Format, littleEndian: boolean): ChannelDecoder {
  const each =
    (sample: (view: DataView, from: number) => number): ChannelDecoder =>
    (view, from, stride, out, at, count) => {
      for (let k = 0; k < count; k++) out[at + k] = sample(view, from + k * stride);
    };
  const finite = (x: number): number => (Number.isFinite(x) ? x : 0);
  switch (encoding) {
    case 'unsigned':
      return each((view, from) => (view.getUint8(from) - 128) / 128);
    case 'a-law':
      return each((view, from) => A_LAW[view.getUint8(from)]!);
    case 'mu-law':
      return each((view, from) => MU_LAW[view.getUint8(from)]!);
    case 'float':
      return sampleBytes === 4
        ? each((view, from) => finite(view.getFloat32(from, littleEndian)))
        : each((view, from) => finite(view.getFloat64(from, littleEndian)));
    default:
      return integers(sampleBytes, littleEndian, each);
  }
}

function integers(
  bytes: number,
  littleEndian: boolean,
  each: (sample: (view: DataView, from: number) => number) => ChannelDecoder,
): ChannelDecoder {
  switch (bytes) {
    case 1:
      return each((view, from) => view.getInt8(from) / 0x80);
    case 2:
      return each((view, from) => view.getInt16(from, littleEndian) / 0x8000);
    case 3: {
      const [low, middle, high] = littleEndian ? [0, 1, 2] : [2, 1, 0];
      return each(
        (view, from) => ((view.getInt8(from + high) << 16) | (view.getUint8(from + middle) << 8) | view.getUint8(from + low)) / 0x800000,
      );
    }
    default:
      return each((view, from) => view.getInt32(from, littleEndian) / 0x80000000);
  }
}
