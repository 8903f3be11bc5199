import { spawnSync } from 'node:child_process';

export interface Run {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs the bundled command line. */
export function earshot(...args: string[]): Run {
  const r = spawnSync(process.execPath, ['dist/cli/earshot.mjs', ...args], { encoding: 'utf8', maxBuffer: 64e6 });
  return { code: r.status, out: r.stdout, err: r.stderr };
}
