import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { earshot } from './run.ts';

const folder = mkdtempSync(join(tmpdir(), 'earshot-sheet-'));
afterAll(() => rmSync(folder, { recursive: true }));

test('a sheet is written, for a station and a paper', () => {
  const out = join(folder, 'sheet.pdf');
  const { code, out: said, err } = earshot('sheet', 'examples/rod-too-far.json', '-o', out, '--paper', 'letter');
  expect(err).toBe('');
  expect(code).toBe(0);
  expect(said).toContain('print it at 100 %, on Letter');
  expect(readFileSync(out).subarray(0, 5).toString()).toBe('%PDF-');
});

test.each([
  ['an unknown paper', ['examples/rod-too-far.json', '-o', 'x.pdf', '--paper', 'a5'], 2, 'Allowed choices are a4, letter'],
  ['no file to write to', ['examples/rod-too-far.json'], 2, '--out'],
  ['an unknown station', ['examples/rod-too-far.json', '-o', 'x.pdf', '--station', 'Nobody'], 3, 'No station "Nobody"'],
  ['a folder that is not there', ['examples/rod-too-far.json', '-o', '/nowhere/x.pdf'], 3, 'it cannot be written (ENOENT)'],
  ['a file without a set', ['examples/drawer.json', '-o', 'x.pdf'], 3, 'drawer.json'],
])('%s is refused', (_, args, code, words) => {
  const run = earshot('sheet', ...args);
  expect(run.code).toBe(code);
  expect(run.err).toContain(words);
});
