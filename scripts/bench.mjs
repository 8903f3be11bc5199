// Bundles every bench/*.bench.ts, runs them one after another and prints what each measured. No test asserts a time.
import { spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { rolldown } from 'rolldown';

const only = process.argv.slice(2);
const files = readdirSync('bench').filter((f) => f.endsWith('.bench.ts') && (only.length === 0 || only.some((o) => f.startsWith(o))));
mkdirSync('.cache/bench', { recursive: true });
for (const file of files) {
  const bundle = await rolldown({ input: `bench/${file}`, platform: 'node' });
  const out = `.cache/bench/${file.replace('.ts', '.mjs')}`;
  await bundle.write({ file: out, format: 'es' });
  await bundle.close();
  const runner = out.replace('.mjs', '.run.mjs');
  writeFileSync(runner, `import { run } from './${file.replace('.ts', '.mjs')}';\nawait run();\n`);
  console.log(`\n== ${file.replace('.bench.ts', '')}`);
  if (spawnSync(process.execPath, [runner], { stdio: 'inherit' }).status !== 0) process.exitCode = 1;
}
