// Runs every gate, whatever fails, and closes with one plain line.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, rmSync } from 'node:fs';

const gates = [
  ['types', 'node_modules/typescript/bin/tsc', '-b'],
  ['lint', 'node_modules/@biomejs/biome/bin/biome', 'ci', '.'],
  ['boundaries', 'node_modules/dependency-cruiser/bin/dependency-cruise.mjs', 'src', '--config', '.dependency-cruiser.cjs'],
  ['unit', 'node_modules/vitest/vitest.mjs', 'run'],
  ['browser', 'node_modules/@playwright/test/cli.js', 'test'],
  ['documents', 'scripts/accuracy.mjs', '--check'],
];
for (const report of ['.cache/unit.json', '.cache/browser.json']) rmSync(report, { force: true });
let passed = 0;
let failed = 0;
let skipped = 0;
for (const [name, ...args] of gates) {
  const t = performance.now();
  const watch = name === 'boundaries'; // it also "passes" when it can read nothing, so its module count is checked
  const r = spawnSync(process.execPath, args, { stdio: watch ? ['ignore', 'pipe', 'inherit'] : 'inherit', encoding: 'utf8' });
  if (watch) process.stdout.write(r.stdout);
  const ok = r.status === 0 && (!watch || Number(/(\d+) modules/.exec(r.stdout)?.[1] ?? 0) > 0);
  console.log(`${ok ? 'ok' : 'FAILED'} ${name} ${((performance.now() - t) / 1000).toFixed(1)} s`);
  let counted = 0;
  if (name === 'unit' && existsSync('.cache/unit.json')) {
    const u = JSON.parse(readFileSync('.cache/unit.json', 'utf8'));
    passed += u.numPassedTests;
    failed += u.numFailedTests;
    skipped += u.numPendingTests;
    counted = u.numFailedTests;
  } else if (name === 'browser' && existsSync('.cache/browser.json')) {
    const { stats } = JSON.parse(readFileSync('.cache/browser.json', 'utf8'));
    // a test that passes only when tried again has failed
    counted = stats.unexpected + stats.flaky;
    passed += stats.expected;
    failed += counted;
    skipped += stats.skipped;
  } else if (ok) passed++;
  if (!ok && counted === 0) failed++;
}
console.log(`${passed} passed, ${failed} failed${skipped ? `, ${skipped} skipped` : ''}`);
process.exit(failed ? 1 : 0);
