/** Changes of the step index by the size of a code, and the steps. */
const INDEX_CHANGES = [-1, -1, -1, -1, 2, 4, 6, 8];
const STEPS = [
  7, 8, 9, 10, 11, 12, 13, 14, 16, 17, 19, 21, 23, 25, 28, 31, 34, 37, 41, 45, 50, 55, 60, 66, 73, 80, 88, 97, 107, 118, 130, 143, 157, 173,
  190, 209, 230, 253, 279, 307, 337, 371, 408, 449, 494, 544, 598, 658, 724, 796, 876, 963, 1060, 1166, 1282, 1411, 1552, 1707, 1878, 2066,
  2272, 2499, 2749, 3024, 3327, 3660, 4026, 4428, 4871, 5358, 5894, 6484, 7132, 7845, 8630, 9493, 10442, 11487, 12635, 13899, 15289, 16818,
  18500, 20350, 22385, 24623, 27086, 29794, 32767,
];

/** Frames in a block of so many bytes, a whole one or the last. */
export function imaFrames(bytes: number, channels: number, blockFrames: number): number {
  const body = Math.floor((bytes - 4 * channels) / (4 * channels));
  return body < 0 ? 0 : Math.min(blockFrames, 1 + 8 * body);
}

/**
 * Decodes a block of IMA ADPCM: 4 bits a sample, each the difference from the sample before in steps that follow the signal.
 *
 * @param out - receives the channels, full scale 1
 * Source: IMA Digital Audio Focus and Technical Working Groups, Recommended Practices for Enhancing Digital Audio Compatibility in Multimedia
 * Systems, rev. 3.00 (1992); block layout: Multimedia Data Standards Update, Microsoft (1994).
 */
export function decodeImaBlock(block: DataView, littleEndian: boolean, frames: number, out: readonly Float64Array[]): void {
  const channels = out.length;
  for (let c = 0; c < channels; c++) {
    const to = out[c]!;
    let value = block.getInt16(4 * c, littleEndian);
    let index = Math.min(STEPS.length - 1, block.getUint8(4 * c + 2));
    to[0] = value / 32768;
    for (let n = 1; n < frames; n++) {
      const group = (n - 1) >> 3;
      const within = (n - 1) & 7;
      const byte = block.getUint8(4 * channels * (1 + group) + 4 * c + (within >> 1));
      const code = within & 1 ? byte >> 4 : byte & 15;
      const step = STEPS[index]!;
      let change = step >> 3;
      if (code & 4) change += step;
      if (code & 2) change += step >> 1;
      if (code & 1) change += step >> 2;
      value = Math.max(-32768, Math.min(32767, value + (code & 8 ? -change : change)));
      index = Math.max(0, Math.min(STEPS.length - 1, index + INDEX_CHANGES[code & 7]!));
      to[n] = value / 32768;
    }
  }
}
