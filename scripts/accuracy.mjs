// Writes the accuracy table of README.md from what the published checks measured; with --check, only says whether it is current.
import { readFileSync, writeFileSync } from 'node:fs';

const rows = JSON.parse(readFileSync('.cache/accuracy.json', 'utf8'));

/** Rounded up to 1, 2 or 5 times a power of ten, so that the last bits of another machine's arithmetic do not change the table. */
function bound(x) {
  if (x < 1e-12) return '1e-12';
  const decade = 10 ** Math.floor(Math.log10(x));
  const step = [1, 2, 5, 10].find((s) => x <= s * decade * (1 + 1e-9)) * decade;
  return step >= 1e-3 && step < 1e4 ? String(Number(step.toPrecision(1))) : step.toExponential(0);
}
const table = [
  '| figure | compared with | values | worst difference |',
  '|---|---|---|---|',
  ...rows
    .filter((r) => r.values > 0)
    .sort((a, b) => a.figure.localeCompare(b.figure))
    .map((r) => `| ${r.figure} | ${r.against} | ${r.values} | ${bound(r.worst)} ${r.unit} |`),
].join('\n');

const readme = readFileSync('README.md', 'utf8');
const marks = /(<!-- accuracy -->\n)[\s\S]*?(\n<!-- \/accuracy -->)/;
const next = readme.replace(marks, (_, open, close) => `${open}${table}${close}`);
if (!process.argv.includes('--check')) writeFileSync('README.md', next);
else if (next !== readme || !marks.test(readme)) {
  console.error('README.md: the accuracy table is not what the tests measure; run `npm run accuracy`.');
  process.exit(1);
} else console.log(`README.md: accuracy table current, ${rows.length} rows`);
