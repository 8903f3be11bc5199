export { type ByteSink, type ByteSource, bytesSource, MemorySink } from './byte-access.ts';
export { type ChannelGain, channelMix } from './channel-mix.ts';
export type { Encoding } from './format.ts';
export type { Info } from './info.ts';
export { type WavAudio, wavAudio } from './wav-audio.ts';
export { WavError } from './wav-error.ts';
export { openWav, type WavFile } from './wav-file.ts';
export { type WavEncoding, WavWriter, type WavWriting, type WavWritten } from './wav-writer.ts';
