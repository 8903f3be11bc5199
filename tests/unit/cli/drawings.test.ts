import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { readDrawing } from '../draw/drawn.ts';
import { earshot } from './run.ts';

const folder = mkdtempSync(join(tmpdir(), 'earshot-drawings-'));
afterAll(() => rmSync(folder, { recursive: true }));

interface Listed {
  readonly folder: string;
  readonly drawings: readonly { readonly file: string; readonly what: string; readonly size: string }[];
  readonly without: readonly { readonly what: string; readonly why: string }[];
}

/** Everything listed is there and nothing else, each a drawing by itself in millimetres of paper. */
function written(set: string, to: string): Listed {
  const { code, out, err } = earshot('drawings', set, '--to', to, '--json');
  expect(code).toBe(0);
  const listed = JSON.parse(out) as Listed;
  const names = listed.drawings.map((d) => d.file);
  expect(new Set(readdirSync(to))).toEqual(new Set(names));
  expect(new Set(names).size).toBe(names.length);
  for (const name of names) {
    expect(err).toContain(`written: ${join(to, name)}`);
    const { root } = readDrawing(readFileSync(join(to, name), 'utf8'));
    const [, , width, height] = root.attributes.viewBox!.split(' ');
    // a unit of the picture is a millimetre: what SVG 2, 8.2, makes of a view box as large as the picture
    expect([root.attributes.width, root.attributes.height]).toEqual([`${width}mm`, `${height}mm`]);
  }
  return listed;
}

test('a set wound by hand has every drawing', () => {
  const listed = written('examples/dipole-and-small-coil.json', join(folder, 'all', 'of-them'));
  expect(listed.drawings.map((d) => d.file)).toEqual([
    'circuit.svg',
    'wiring.svg',
    'coil.svg',
    'jig-strip.svg',
    'dial.svg',
    'dial-strip.svg',
    'aerial.svg',
    'ruler.svg',
  ]);
  expect(listed.without).toEqual([]);
  expect(Object.fromEntries(listed.drawings.map((d) => [d.file, d.size]))).toMatchObject({
    'circuit.svg': 'not to scale',
    'coil.svg': 'to scale',
    'jig-strip.svg': 'true to size',
    'aerial.svg': 'to scale',
  });
});

test('what there is no drawing of is said with its reason', () => {
  const set = JSON.parse(readFileSync('examples/dipole-and-small-coil.json', 'utf8'));
  set.place = JSON.parse(readFileSync('examples/fenmarket.json', 'utf8')).place;
  set.tank.coil = { kind: 'electrical', inductance: '180 nH', q: 211, frequency: '98 MHz', selfCapacitance: '0.55 pF', turns: 1 };
  set.tank.aerialCoupling = { kind: 'tap', turns: '0.1' };
  set.tank.detectorCoupling = { kind: 'tap', turns: '0.8' };
  set.tank.capacitor = { minimum: '3 pF', maximum: '20 pF', rotation: '720 deg' };
  const file = join(folder, 'set.json');
  writeFileSync(file, JSON.stringify(set));
  const listed = written(file, join(folder, 'fewer'));
  expect(listed.drawings.map((d) => d.file)).toEqual(['circuit.svg', 'wiring.svg', 'dial-strip.svg', 'aerial.svg', 'ruler.svg']);
  expect(listed.without.map((w) => w.what)).toEqual(['coil', 'jig strip', 'dial']);
  expect(earshot('drawings', file, '--to', join(folder, 'said')).out).toContain(
    'No coil: the coil is given by its values, not by its shape.',
  );
});

test('without --json a table says what each is', () => {
  const { code, out } = earshot('drawings', 'examples/medium-wave.json', '--to', join(folder, 'table'));
  expect(code).toBe(0);
  expect(out).toMatch(/wiring\.svg +not to scale +the parts as they lie on the bench/);
});

test.each([
  ['no folder', ['examples/rod-too-far.json'], 2, '--to'],
  ['an unknown station', ['examples/rod-too-far.json', '--to', folder, '--station', 'Nobody'], 3, 'No station "Nobody"'],
  ['a folder that is a file', ['examples/rod-too-far.json', '--to', 'package.json'], 3, 'the folder cannot be made (EEXIST)'],
  ['a file without a set', ['examples/drawer.json', '--to', folder], 3, 'drawer.json'],
])('%s is refused', (_, args, code, words) => {
  const run = earshot('drawings', ...args);
  expect(run.code).toBe(code);
  expect(run.err).toContain(words);
});
