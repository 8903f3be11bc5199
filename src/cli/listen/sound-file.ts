import { closeSync, ftruncateSync, openSync, readSync, statSync, writeSync } from 'node:fs';
import { SOUND_RATE } from '#engine';
import {
  type ByteSink,
  type ByteSource,
  type Info,
  openWav,
  type WavEncoding,
  WavError,
  type WavFile,
  WavWriter,
  type WavWritten,
} from '#wav';
import { BadFile } from '../bad-file.ts';

/** A sound file on its way to the disk; what was written so far can be finished at any time. */
export interface SoundFile {
  /** @throws BadFile if the disk or the format has no room left */
  write(samples: Float64Array): void;
  finish(info: Info): WavWritten;
}

/** A mono file at the rate of the engine. */
export function writeSound(path: string, encoding: WavEncoding): SoundFile {
  const disk = told(path, 'written', () => openSync(path, 'w'));
  const sink: ByteSink = {
    write(at, bytes) {
      for (let done = 0; done < bytes.length; ) done += writeSync(disk, bytes, done, bytes.length - done, at + done);
    },
  };
  const writer = told(path, 'written', () => {
    ftruncateSync(disk);
    return new WavWriter(sink, { rate: SOUND_RATE, channels: 1, encoding });
  });
  return {
    write: (samples) => told(path, 'written', () => writer.write(samples, samples)),
    finish: (info) =>
      told(path, 'written', () => {
        const written = writer.finish(info);
        closeSync(disk);
        return written;
      }),
  };
}

/** Opens a sound file for reading, piece by piece. */
export function readSound(path: string): WavFile {
  return told(path, 'read', () => {
    const { size } = statSync(path);
    const disk = openSync(path, 'r');
    const source: ByteSource = { size, read: (at, into) => readSync(disk, into, 0, into.length, at) };
    return openWav(source);
  });
}

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file or folder',
  EISDIR: 'it is a folder',
  EACCES: 'that is not allowed',
  ENOSPC: 'the disk is full',
};

function told<T>(path: string, doing: 'read' | 'written', work: () => T): T {
  try {
    return work();
  } catch (e) {
    if (e instanceof WavError) throw new BadFile(`${path}: ${e.why}\n  ${e.mend}`);
    const { code } = e as NodeJS.ErrnoException;
    if (code === undefined) throw e;
    throw new BadFile(`${path}: it cannot be ${doing}: ${REASONS[code] ?? code}\n  Give another path.`);
  }
}
