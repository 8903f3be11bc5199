import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readIvCsv, readPlaceFile, readSetFile, readTerrainCsv } from '#set-file';
import { base, baseText } from './base.ts';

/** A reader of other files that may return anything at all. */
const anyReader = fc.oneof(
  fc.constant({}),
  fc.string().map((text) => ({ read: () => text })),
  fc.anything().map((thing) => ({ read: () => thing as string })),
  fc.anything().map((thing) => ({
    read: () => {
      throw thing;
    },
  })),
);

/** Whatever comes back is sound: a value without NaN, or problems that say where, what, why and how. */
function mustBeSound(outcome: ReturnType<typeof readSetFile>): void {
  if (outcome.ok) {
    expect(hasNaN(outcome.value)).toBe(false);
    return;
  }
  expect(outcome.problems.length).toBeGreaterThan(0);
  for (const p of outcome.problems) {
    expect(p.line).toBeGreaterThanOrEqual(1);
    expect(p.column).toBeGreaterThanOrEqual(1);
    for (const words of [p.given, p.why, p.mend]) expect(words).toMatch(/\S/);
  }
}

function hasNaN(value: unknown): boolean {
  if (typeof value === 'number') return !Number.isFinite(value);
  return typeof value === 'object' && value !== null && Object.values(value).some(hasNaN);
}

const junk = fc.oneof(
  fc.constantFrom(
    null,
    true,
    '',
    'x',
    '1',
    '-1 mm',
    '1 pF',
    1e308,
    -1,
    0,
    [],
    {},
    [[]],
    { part: 'x' },
    { file: 'x' },
    { csv: 'x' },
    { kind: 'x' },
    [null],
  ),
  fc.jsonValue({ maxDepth: 2 }),
);

/** Paths of every value in the base file. */
function pathsOf(value: unknown, path: string[] = []): string[][] {
  if (typeof value !== 'object' || value === null) return [path];
  return [path, ...Object.entries(value).flatMap(([key, v]) => pathsOf(v, [...path, key]))];
}
const paths = pathsOf(base()).filter((p) => p.length > 0);

test('any value in any place is read, or refused with reasons', () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(fc.constantFrom(...paths), junk), { minLength: 1, maxLength: 3 }), anyReader, (changes, options) => {
      const draft = base();
      for (const [path, value] of changes) {
        const owner = path.slice(0, -1).reduce((o, key) => (typeof o === 'object' && o !== null ? o[key] : undefined), draft);
        if (typeof owner === 'object' && owner !== null) owner[path.at(-1)!] = structuredClone(value);
      }
      const text = JSON.stringify(draft);
      mustBeSound(readSetFile(text, options));
      expect(() => readPlaceFile(text, options)).not.toThrow();
    }),
    { numRuns: 500 },
  );
});

test('any drawer is read, or refused with reasons', () => {
  const shelf = fc.oneof(junk, fc.dictionary(fc.constantFrom('a', 'b'), fc.oneof(junk, fc.record({ values: junk, band: junk }))));
  fc.assert(
    fc.property(fc.constantFrom('detectors', 'earpieces', 'transformers', 'capacitors', 'wires', 'rods'), shelf, (category, parts) => {
      const draft = { ...base(), detector: { part: 'a' }, drawer: { [category]: parts } };
      mustBeSound(readSetFile(JSON.stringify(draft)));
      // a drawer that comes with another file's set
      mustBeSound(readSetFile('{"version":1,"set":{"file":"x"}}', { read: () => JSON.stringify(draft) }));
    }),
    { numRuns: 300 },
  );
});

test('any text is read, or refused with reasons', () => {
  const text = baseText();
  const scraps = fc.constantFrom('{', '}', '[', ']', ',', ':', '"', '\\', '\n', '\u0000', '1', '-', 'NaN', 'é', '\ud800', '//', '\ufeff');
  const spoiled = fc
    .tuple(fc.nat(text.length), fc.nat(20), fc.array(scraps, { maxLength: 4 }))
    .map(([at, drop, put]) => text.slice(0, at) + put.join('') + text.slice(at + drop));
  fc.assert(
    fc.property(fc.oneof(spoiled, fc.string({ unit: 'binary' }), fc.json()), (t) => mustBeSound(readSetFile(t))),
    { numRuns: 1000 },
  );
});

test('any table is read, or refused with reasons', () => {
  const scraps = fc.array(
    fc.constantFrom('0', '1', '-1', '2.5', ',', ';', '\t', '\n', ' ', 'km', 'V', '(m)', 'x', '"', '#', '\r\n', '1e999'),
    { maxLength: 30 },
  );
  fc.assert(
    fc.property(
      fc.oneof(
        scraps.map((s) => s.join('')),
        fc.string({ unit: 'binary' }),
      ),
      (text) => {
        for (const read of [readTerrainCsv(text), readIvCsv(text)])
          if (read.ok) expect(hasNaN(read.value)).toBe(false);
          else for (const p of read.problems) for (const words of [p.given, p.why, p.mend]) expect(words).toMatch(/\S/);
      },
    ),
    { numRuns: 1000 },
  );
});

test('two hundred million characters are refused at once', () => {
  const text = 'x'.repeat(200e6);
  const from = performance.now();
  expect(readSetFile(text).ok).toBe(false);
  expect(readTerrainCsv(text).ok).toBe(false);
  expect(performance.now() - from).toBeLessThan(100);
});
