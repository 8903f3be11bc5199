import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { type Field, fieldAt, fieldDimension } from '#set-file';

const SECTIONS = ['place', 'aerial', 'tank', 'detector', 'phones', 'ear', 'programme', 'drawer'];
const examples = readdirSync('examples')
  .filter((f) => f.endsWith('.json'))
  .map((f) => [f, JSON.parse(readFileSync(`examples/${f}`, 'utf8')) as Record<string, unknown>] as const);

/** Every field below one, itself included. */
const all = (f: Field): readonly Field[] => {
  const below = f.kind === 'group' || f.kind === 'forms' ? f.fields : f.kind === 'list' ? f.items : [];
  return [f, ...below.flatMap(all)];
};

test.each(examples)('%s: every value that stands in it is reached by a field', (_, document) => {
  for (const section of SECTIONS.filter((s) => s in document && !isFile(document[s]))) {
    const field = fieldAt(document, [section])!;
    const reached = new Set(all(field).map((f) => f.path.join('.')));
    const free = all(field)
      .filter((f) => f.kind === 'free' || (f.kind === 'list' && f.given === undefined))
      .map((f) => f.path.join('.'));
    for (const path of leaves(document[section], [section])) {
      const at = path.join('.');
      const discriminator = ['kind', 'shape', 'part'].includes(String(path.at(-1)));
      expect(reached.has(at) || discriminator || free.some((f) => at.startsWith(f)), at).toBe(true);
    }
  }
});

test.each(examples)('%s: a field says the same dimension as the path asked by itself', (_, document) => {
  for (const section of SECTIONS) {
    const field = fieldAt(document, [section]);
    for (const f of field ? all(field) : [])
      if (f.kind === 'quantity') expect(f.dimension).toBe(fieldDimension(document, f.path.map(String).join('.')));
  }
});

test('a field carries its meaning, range, words, default, and the part named in its place', () => {
  const document = {
    tank: { coil: { kind: 'geometry', turns: 5, innerDiameter: '10 mm', wire: { part: 'x' } } },
    detector: { part: 'mine' },
  };
  const coil = fieldAt(document, ['tank', 'coil'])!;
  expect(coil).toMatchObject({ kind: 'forms', by: 'kind', words: ['geometry', 'electrical'], chosen: 'geometry', required: true });
  const under = Object.fromEntries(all(coil).map((f) => [f.key, f]));
  expect(under.turns).toMatchObject({ kind: 'quantity', dimension: 'turns', range: { min: 1, max: 1000 }, given: 5, required: true });
  expect(under.turns!.about).toContain('halves and quarters');
  expect(under.metal).toMatchObject({ kind: 'words', fallback: 'copper', given: undefined, required: false });
  expect(under.surfaceFactor).toMatchObject({ kind: 'quantity', words: ['bright', 'tarnished'], fallback: 'bright' });
  expect(under.wire!.part).toEqual({ category: 'wires', name: 'x' });
  expect(fieldAt(document, ['detector'])!.part).toEqual({ category: 'detectors', name: 'mine' });
});

test('forms within forms, short words and lists are followed', () => {
  const document = {
    aerial: { kind: 'wires', shape: 'rod', length: '75 cm', against: { kind: 'radials', count: 4, length: '70 cm' } },
    place: { stations: [{ name: 'A' }, { name: 'B' }] },
    tank: { aerialCoupling: 'direct' },
  };
  const aerial = fieldAt(document, ['aerial'])!;
  expect(aerial).toMatchObject({ chosen: 'wires' });
  const shape = all(aerial).find((f) => f.key === 'shape')!;
  expect(shape).toMatchObject({ kind: 'forms', by: 'shape', chosen: 'rod' });
  expect(all(aerial).find((f) => f.key === 'against')).toMatchObject({ kind: 'forms', chosen: 'radials' });
  expect(fieldAt(document, ['tank', 'aerialCoupling'])).toMatchObject({ kind: 'forms', chosen: 'direct', fields: [] });
  expect(fieldAt(document, ['place', 'stations'])).toMatchObject({ kind: 'list', items: [{ path: ['place', 'stations', 0] }, {}] });
});

test('a quantity that can be given in other ways names them, and a form that a quantity can stand for says so', () => {
  expect(fieldAt({ ear: { room: '28 dB(A)' } }, ['ear', 'room'])).toMatchObject({
    kind: 'quantity',
    dimension: 'weightedLevel',
    forms: { by: 'kind', words: ['noise-criterion', 'a-weighted', 'bands'] },
  });
  expect(fieldAt({ ear: { room: { kind: 'noise-criterion', rating: 20 } } }, ['ear', 'room'])).toMatchObject({
    kind: 'forms',
    chosen: 'noise-criterion',
    dimension: 'weightedLevel',
  });
});

test('nothing is asked of a document that is at fault', () => {
  for (const document of [null, 3, [], { tank: 'none' }, { tank: { coil: 7 } }, JSON.parse('{"__proto__":{"tank":1}}')])
    expect(() => fieldAt(document, ['tank', 'coil'])).not.toThrow();
  expect(fieldAt({}, ['no', 'such'])).toBeNull();
});

const isFile = (o: unknown): boolean => typeof o === 'object' && o !== null && 'file' in o;
function leaves(o: unknown, path: (string | number)[]): (string | number)[][] {
  if (typeof o !== 'object' || o === null) return [path];
  return Object.entries(o).flatMap(([k, v]) => leaves(v, [...path, Array.isArray(o) ? Number(k) : k]));
}
