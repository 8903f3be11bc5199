import { spawnSync } from 'node:child_process';
import { rmSync } from 'node:fs';

/** The command line is tested as it is shipped: bundled. Where that fails its own tests fail, and only they. */
export default function setup(): void {
  rmSync('dist/cli', { recursive: true, force: true });
  spawnSync(process.execPath, ['node_modules/rolldown/bin/cli.mjs', '-c', 'rolldown.cli.config.mjs'], {
    stdio: ['ignore', 'ignore', 'inherit'],
  });
}
