// Plain Node, no dependencies: it runs before anything is installed. Usage: ensure.mjs [deps] [build] [sox] [poppler] [chromium]
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { findChromium } from './chromium.mjs';

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
/** Time of the newest file; of folders too, which change when a file goes away. */
const newest = (p) => {
  const own = statSync(p);
  return Math.max(own.mtimeMs, ...(own.isDirectory() ? readdirSync(p).map((f) => newest(join(p, f))) : []));
};
const COMMON = ['src', 'package.json', 'package-lock.json'];
/** What is built, what of, and how. */
const BUILT = [
  ['dist/app/sw.js', [...COMMON, 'vite', 'vite.config.ts', 'assets', 'examples'], ['vite/bin/vite.js', 'build', '--logLevel', 'warn']],
  ['dist/cli/earshot.mjs', [...COMMON, 'rolldown.cli.config.mjs'], ['rolldown/bin/cli.mjs', '-c', 'rolldown.cli.config.mjs']],
];
function build() {
  for (const [result, sources, [tool, ...args]] of BUILT) {
    if (existsSync(result) && statSync(result).mtimeMs > Math.max(...sources.map(newest))) continue;
    // the bundlers' lists of files are no news to a user; their errors are
    if (!run(process.execPath, [`node_modules/${tool}`, ...args], ['inherit', 'ignore', 'inherit'])) die('the build failed');
  }
}
/** The independent reader and writer of sound files that the tests ask. */
function sox() {
  if (run('sox', ['--version'], 'ignore')) return;
  const apt = (...a) => run('apt-get', ['-qq', ...a], ['ignore', 'ignore', 'inherit']);
  if (!((apt('install', '-y', 'sox') || (apt('update') && apt('install', '-y', 'sox'))) && run('sox', ['--version'], 'ignore')))
    die('the tests ask sox to read our sound files, and it could not be installed; install sox and try again');
}
/** The independent reader of PDF files that the tests ask. */
function poppler() {
  const there = () => ['pdftotext', 'pdftoppm'].every((tool) => run(tool, ['-v'], 'ignore'));
  if (there()) return;
  const apt = (...a) => run('apt-get', ['-qq', ...a], ['ignore', 'ignore', 'inherit']);
  if (!((apt('install', '-y', 'poppler-utils') || (apt('update') && apt('install', '-y', 'poppler-utils'))) && there()))
    die(
      'the tests ask pdftotext and pdftoppm to read our build sheets, and they could not be installed; install poppler-utils and try again',
    );
}
/** A browser for the browser tests. */
function chromium() {
  if (findChromium()) return;
  if (process.env.CHROMIUM_PATH) die(`CHROMIUM_PATH: there is nothing at ${process.env.CHROMIUM_PATH}`);
  const apt = (...a) => run('apt-get', ['-qq', ...a], ['ignore', 'ignore', 'inherit']);
  const install = () => apt('install', '-y', '--no-install-recommends', 'chromium', 'fonts-dejavu-core');
  if (!((install() || (apt('update') && install())) && findChromium()))
    die('the browser tests need Chromium, and it could not be installed; install it, or set CHROMIUM_PATH to one, and try again');
}
const steps = { deps, build, sox, poppler, chromium };
for (const s of process.argv.slice(2)) steps[s]();
