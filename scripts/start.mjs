// Does the main job on the demo set: every station of an invented place, from mast to ear. Then serves the app to this machine, until Ctrl-C;
// with --once it ends before that.
import { spawn, spawnSync } from 'node:child_process';

const COMMAND = 'dist/cli/earshot.mjs';
const given = process.argv.slice(2);
const once = given.includes('--once');

const { status } = spawnSync(process.execPath, [COMMAND, 'hear', 'examples/dipole-and-small-coil.json'], { stdio: 'inherit' });
if (status !== 0 || once) process.exit(status ?? 1);

console.log();
const server = spawn(process.execPath, [COMMAND, 'serve', ...given], { stdio: 'inherit' });
// the server ends in its own time; this process ends as it does
for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, () => server.kill(signal));
server.on('exit', (code) => process.exit(code ?? 1));
