import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { earshot } from './run.ts';

const DEMO = 'examples/dipole-and-small-coil.json';
const folder = mkdtempSync(join(tmpdir(), 'earshot-'));
const file = (name: string, text: string): string => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
};

describe('commands', () => {
  for (const stage of ['place', 'aerial', 'tank', 'detector', 'phones', 'ear'])
    test(`${stage}: a table, JSON with value, unit and method, and workings`, () => {
      const text = earshot(stage, DEMO);
      expect(text.code).toBe(0);
      expect(text.out).toContain('figure');
      const json = JSON.parse(earshot(stage, DEMO, '--json').out);
      const names = json.groups.flatMap((g: { figures: object }) => Object.keys(g.figures));
      expect(names.length).toBeGreaterThan(3);
      const working = earshot(stage, DEMO, '--working', names[1]);
      expect(working.code).toBe(0);
      expect(working.out).toMatch(/formula/);
      expect(working.out).toMatch(/source/);
    });
  test('place takes a file that holds a place alone', () => {
    const r = earshot('place', 'examples/fenmarket.json', '--station', 'Lantern');
    expect(r.code).toBe(0);
    expect(r.out).toContain('Lantern');
    expect(r.out).not.toContain('Fen Talk');
  });
  test('schema: a JSON Schema 2020-12 that names every section', () => {
    const schema = JSON.parse(earshot('schema').out);
    expect(schema.$schema).toContain('2020-12');
    const text = JSON.stringify(schema);
    for (const key of ['place', 'aerial', 'tank', 'detector', 'phones', 'ear', 'programme', 'drawer']) expect(text).toContain(`"${key}"`);
  });
  test('sweep: a table, CSV and JSON of one number varied, with units as written', () => {
    const text = earshot('sweep', DEMO, 'tank.coil.turns', '4', '6', '--steps', '3');
    expect(text.code).toBe(0);
    expect(text.out.split('\n').filter((l) => /^\s*[456]\s/.test(l))).toHaveLength(3);
    const csv = earshot(
      'sweep',
      DEMO,
      'place.stations.0.distance',
      '2 km',
      '20 km',
      '--steps',
      '4',
      '--log',
      '--csv',
      '--show',
      'ladder.field',
    );
    const rows = csv.out
      .trim()
      .split('\n')
      .slice(1)
      .map((l) => l.split(','));
    expect(rows.map((r) => Number(r[0]))).toEqual(
      [2000, 2000 * 10 ** (1 / 3), 2000 * 10 ** (2 / 3), 20000].map((x) => expect.closeTo(x, 3)),
    );
    for (let k = 1; k < rows.length; k++) expect(Number(rows[k]![1])).toBeLessThan(Number(rows[k - 1]![1]));
    const json = JSON.parse(earshot('sweep', DEMO, 'tank.capacitor.contactResistance', '10 mohm', '1 ohm', '--steps', '2', '--json').out);
    expect(json.rows[1].value).toMatchObject({ value: 1, unit: 'ohm' });
  });
});

describe('what goes wrong, and with which exit code', () => {
  test('2: the command line was not understood', () => {
    expect(earshot('hear').code).toBe(2);
    expect(earshot('listn', DEMO).code).toBe(2);
    expect(earshot('hear', DEMO, '--loud').code).toBe(2);
  });
  test('3: a file that is not there, is a folder, is too large, is not JSON, or says what cannot be', () => {
    expect(earshot('hear', join(folder, 'none.json'))).toMatchObject({ code: 3, err: expect.stringContaining('no such file') });
    expect(earshot('hear', folder)).toMatchObject({ code: 3, err: expect.stringContaining('folder') });
    expect(earshot('hear', file('large.json', ' '.repeat(6e6)))).toMatchObject({ code: 3, err: expect.stringContaining('MB') });
    expect(earshot('hear', file('broken.json', '{"version": 1,\n "name": }'))).toMatchObject({
      code: 3,
      err: expect.stringMatching(/broken\.json:2:\d+/),
    });
    const wrong = earshot('hear', file('wrong.json', '{"version": 1,\n  "aerail": {}}'));
    expect(wrong.code).toBe(3);
    expect(wrong.err).toMatch(/aerail[\s\S]*aerial/);
  });
  test('3: a station, a figure or a field that is not there is named, with what there is', () => {
    expect(earshot('hear', DEMO, '--station', 'Fen Tlk').err).toContain('Fen Talk');
    expect(earshot('hear', DEMO, '--working', 'ladder.emff').err).toContain('ladder.emf');
    const sweep = earshot('sweep', DEMO, 'tank.coil.turn', '4', '6');
    expect(sweep).toMatchObject({ code: 3 });
    expect(sweep.err).toContain('tank.coil.turns');
    expect(earshot('sweep', DEMO, 'tank.coil.turns', 'four', '6').code).toBe(3);
    expect(earshot('sweep', DEMO, 'tank.coil.turns', '-3', '6').code).toBe(3);
  });
  test('3: a place alone has no ear; hear says what is missing', () => {
    const r = earshot('hear', 'examples/fenmarket.json');
    expect(r.code).toBe(3);
    expect(r.err).toContain('aerial');
  });
  test('colour stays out of a pipe', () => {
    expect(earshot('hear', DEMO, '--no-advice').out).not.toContain('\u001b');
  });
});
