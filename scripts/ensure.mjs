// Plain Node, no dependencies: it runs before anything is installed. Usage: ensure.mjs [deps] [build] [sox]
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const run = (cmd, args, stdio = 'inherit') => spawnSync(cmd, args, { stdio }).status === 0;
const die = (m) => {
  console.error(m);
  process.exit(1);
};
const npm = process.env.npm_execpath ? [process.execPath, process.env.npm_execpath] : ['npm'];
const runNpm = (...a) => run(npm[0], [...npm.slice(1), ...a]);

function deps() {
  const key = createHash('sha256')
    .update(readFileSync('package.json'))
    .update(readFileSync('package-lock.json'))
    .update(process.version + process.platform + process.arch)
    .digest('hex');
  const stamp = 'node_modules/.ensured';
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === key) return;
  const flags = ['--no-audit', '--no-fund', '--loglevel=error'];
  if (!runNpm('ci', ...flags)) {
    console.error('npm ci refused the lock file; installing from package.json (all versions there are exact)');
    if (!runNpm('install', '--no-package-lock', ...flags)) die('could not install the packages');
  }
  writeFileSync(stamp, key);
}
const newest = (p) => (statSync(p).isDirectory() ? Math.max(0, ...readdirSync(p).map((f) => newest(join(p, f)))) : statSync(p).mtimeMs);
function build() {
  const src = Math.max(...['src', 'rolldown.cli.config.mjs', 'package-lock.json'].map(newest));
  if (existsSync('dist/cli/earshot.mjs') && statSync('dist/cli/earshot.mjs').mtimeMs > src) return;
  // the bundler's list of files is no news to a user; its errors are
  if (!run(process.execPath, ['node_modules/rolldown/bin/cli.mjs', '-c', 'rolldown.cli.config.mjs'], ['inherit', 'ignore', 'inherit']))
    die('the build failed');
}
/** The independent reader and writer of sound files that the tests ask. */
function sox() {
  if (run('sox', ['--version'], 'ignore')) return;
  const apt = (...a) => run('apt-get', ['-qq', ...a], ['ignore', 'ignore', 'inherit']);
  if (!((apt('install', '-y', 'sox') || (apt('update') && apt('install', '-y', 'sox'))) && run('sox', ['--version'], 'ignore')))
    die('the tests ask sox to read our sound files, and it could not be installed; install sox and try again');
}
const steps = { deps, build, sox };
for (const s of process.argv.slice(2)) steps[s]();
