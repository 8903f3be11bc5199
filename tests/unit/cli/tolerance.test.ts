import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { earshot } from './run.ts';

const folder = mkdtempSync(join(tmpdir(), 'earshot-tolerance-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const SET = 'examples/dipole-and-small-coil.json';

test('the picture shows as many sets of each kind as the figures say, and JSON stays JSON beside it', () => {
  const picture = join(folder, 'dots.svg');
  const run = earshot('tolerance', SET, '--station', 'Fen Talk', '--samples', '64', '--seed', '5', '--json', '--picture', picture);
  expect(run.code).toBe(0);
  const { heard, understood, samples } = JSON.parse(run.out) as Record<'heard' | 'understood', { value: number }> & { samples: number };
  const svg = readFileSync(picture, 'utf8');
  const count = (kind: string): number => Number(new RegExp(`data-dots="${kind}" data-count="(\\d+)"`).exec(svg)?.[1] ?? 0);
  expect(samples).toBe(64);
  expect(count('understood')).toBe(Math.round(64 * understood.value));
  expect(count('understood') + count('heard')).toBe(Math.round(64 * heard.value));
  expect(['understood', 'heard', 'silent', 'lost'].reduce((sum, kind) => sum + count(kind), 0)).toBe(64);
});

test('odds with what they may be out by, and how far each trim goes', () => {
  const { code, out } = earshot('tolerance', SET, '--station', 'Fen Talk', '--samples', '64');
  expect(code).toBe(0);
  for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(96);
  expect(out).toMatch(/most words understood +in \d+ of 100 builds \(give or take \d+\)/);
  expect(out.replace(/\s+/g, ' ')).toMatch(
    /tunes too high: squeeze the winding by 1 mm \(-[\d.]+ MHz; a usual error takes [\d.]+ times as much\)/,
  );
});

test('a path that cannot be written is told', () => {
  const run = earshot('tolerance', SET, '--samples', '16', '--picture', join(folder, 'none', 'dots.svg'));
  expect(run.code).not.toBe(0);
  expect(run.err).toContain('it cannot be written');
});
