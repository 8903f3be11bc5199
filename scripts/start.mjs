// Does the main job on the demo set: every station of an invented place, from mast to ear.
import { spawnSync } from 'node:child_process';

const run = (...args) => spawnSync(process.execPath, ['dist/cli/earshot.mjs', ...args], { stdio: 'inherit' }).status ?? 1;
process.exit(run('hear', 'examples/dipole-and-small-coil.json'));
