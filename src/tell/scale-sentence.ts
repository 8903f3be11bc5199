import type { SoundScale } from '#engine';

const dB = (x: number): string => `${Number(x.toFixed(1))} dB`;

/** What a sample of a sound stands for, in a sentence: the same in the file and on every screen. */
export function scaleSentence({ fullScale, makeUpGain }: SoundScale): string {
  const level = `a sine whose peak is full scale stands for ${dB(fullScale - makeUpGain)} SPL at the ear`;
  if (makeUpGain === 0) return `True level: ${level}; no make-up gain.`;
  return `Make-up gain ${dB(makeUpGain)}: the file is ${makeUpGain > 0 ? 'louder' : 'quieter'} than the set by that; ${level}.`;
}
