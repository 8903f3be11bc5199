import { execFileSync } from 'node:child_process';

/** The command line is tested as it is shipped: bundled. */
export default function setup(): void {
  execFileSync(process.execPath, ['node_modules/rolldown/bin/cli.mjs', '-c', 'rolldown.cli.config.mjs'], {
    stdio: ['ignore', 'ignore', 'inherit'],
  });
}
