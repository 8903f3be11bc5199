import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** The independent tool, installed where it is missing. */
function ensured(): void {
  if (spawnSync('sox', ['--version']).status === 0) return;
  execFileSync(process.execPath, ['scripts/ensure.mjs', 'sox'], { stdio: 'inherit' });
}
ensured();

/** Runs sox among the given files and returns what it wrote to `result`, or printed. */
export function sox(args: readonly string[], files: Readonly<Record<string, Uint8Array>>, result: string | null = null): Buffer {
  const folder = mkdtempSync(join(tmpdir(), 'earshot-sox-'));
  try {
    for (const [name, bytes] of Object.entries(files)) writeFileSync(join(folder, name), bytes);
    const printed = execFileSync('sox', [...args], { cwd: folder, stdio: ['ignore', 'pipe', 'pipe'], maxBuffer: 2 ** 28 });
    return result === null ? printed : readFileSync(join(folder, result));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** What sox writes when it can neither know the length beforehand nor go back: raw 32-bit sound in by a pipe, 16-bit WAV out by a pipe. */
export const soxPiped = (raw: Uint8Array): Buffer =>
  execFileSync('sh', ['-c', 'cat | sox -t raw -r 48000 -e signed-integer -b 32 -c 1 - -b 16 -t wav - | cat'], {
    input: raw,
    stdio: ['pipe', 'pipe', 'ignore'],
    maxBuffer: 2 ** 28,
  });

/** What sox reads in a sound file: 32-bit whole numbers, by channels. */
export function soxSamples(wav: Uint8Array, channels: number): Int32Array[] {
  const raw = sox(
    ['--no-dither', 'in.wav', '-t', 'raw', '-e', 'signed-integer', '-b', '32', '-L', 'out.raw'],
    { 'in.wav': wav },
    'out.raw',
  );
  const all = new Int32Array(new Uint8Array(raw).buffer);
  return Array.from({ length: channels }, (_, c) => all.filter((_, n) => n % channels === c));
}
