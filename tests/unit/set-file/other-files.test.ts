import { describe, expect, test } from 'vitest';
import { type Problem, readPlaceFile, readSetFile } from '#set-file';
import { base, type Draft, placeOf } from './base.ts';

/** Reads the first of several files; the others are found by name. */
function readAmong(files: Record<string, Draft>) {
  const texts = Object.fromEntries(
    Object.entries(files).map(([name, d]) => [name, typeof d === 'string' ? d : JSON.stringify(d, null, 2)]),
  );
  const asked: string[] = [];
  const read = (path: string): string => {
    asked.push(path);
    if (!Object.hasOwn(texts, path)) throw new Error('no such file');
    return texts[path]!;
  };
  return { texts, asked, read, outcome: readSetFile(Object.values(texts)[0]!, { read }) };
}

function problemsOf(files: Record<string, Draft>): readonly Problem[] {
  const { outcome } = readAmong(files);
  if (outcome.ok) throw new Error('it was read');
  return outcome.problems;
}

const { place, ...set } = base();
const whole = readSetFile(JSON.stringify(base())) as { ok: true; value: object };

describe('what another file holds is as good as if it stood here', () => {
  test('place and set', () => {
    const { outcome } = readAmong({
      main: { version: 1, place: { file: 'town.json' }, set: { file: 'set.json' } },
      'town.json': { version: 1, place },
      'set.json': set,
    });
    expect(outcome).toMatchObject({ ok: true, value: whole.value });
    if (outcome.ok) expect(outcome.source.files.toSorted()).toEqual(['set.json', 'town.json']);
  });

  test('a section given here takes the place of the other one', () => {
    const aerial = { kind: 'whip', length: '1 m' };
    const { outcome } = readAmong({ main: { version: 1, set: { file: 'set.json' }, aerial }, 'set.json': set });
    if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
    expect(outcome.value.aerial.kind).toBe('whip');
    expect(outcome.value.tank).toEqual((whole.value as { tank: object }).tank);
  });

  test('a file is looked for beside the file that names it', () => {
    const { asked, outcome } = readAmong({
      main: { ...set, place: { file: 'towns/fen/a.json' } },
      'towns/fen/a.json': { version: 1, place: { file: '../b.json' } },
      'towns/fen/../b.json': { version: 1, place: { file: '/c.json' } },
      '/c.json': { version: 1, place },
    });
    expect(asked).toEqual(['towns/fen/a.json', 'towns/fen/../b.json', '/c.json']);
    expect(outcome.ok).toBe(true);
  });

  test('the drawer of a set file goes with it, and the drawer here comes first', () => {
    const part = (saturationCurrent: string) => ({ values: { kind: 'junction', saturationCurrent, junctionCapacitance: '1 pF' } });
    const files = {
      main: { version: 1, set: { file: 'set.json' }, drawer: { file: 'drawer.json' } } as Draft,
      'set.json': { ...set, detector: { part: 'mine' }, drawer: { detectors: { mine: part('1 uA') } } },
      'drawer.json': { version: 1, drawer: { detectors: { other: part('2 uA') } } } as Draft,
    };
    expect(readAmong(files).outcome).toMatchObject({ ok: true, value: { detector: { saturationCurrent: 1e-6 } } });
    files['drawer.json'].drawer.detectors = { mine: part('3 uA') };
    expect(readAmong(files).outcome).toMatchObject({ ok: true, value: { detector: { saturationCurrent: 3e-6 } } });
  });
});

describe('other files that cannot be used', () => {
  test('unreadable', () => {
    const problems = problemsOf({ main: { ...set, place: { file: 'gone.json' } } });
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({
      path: 'place.file',
      file: null,
      given: '"gone.json"',
      why: 'the file cannot be read: no such file',
    });
  });

  test('a set that is unreadable is not complained of section by section', () => {
    expect(problemsOf({ main: { version: 1, set: { file: 'gone.json' } } }).map((p) => p.path)).toEqual(['set.file']);
  });

  test('a reader that returns something else', () => {
    const outcome = readSetFile(JSON.stringify({ ...set, place: { file: 'x' } }), { read: () => 5 as unknown as string });
    expect(outcome).toMatchObject({ ok: false, problems: [{ path: 'place.file', why: 'the file cannot be read: it is no text' }] });
  });

  test('not JSON: the problem stands in that file', () => {
    const problems = problemsOf({ main: { ...set, place: { file: 'town.json' } }, 'town.json': '{\n  "version": 1,\n  "place": }' });
    expect(problems).toEqual([expect.objectContaining({ path: 'place', file: 'town.json', line: 3, column: 12 })]);
  });

  test('a wrong value: the problem stands in that file', () => {
    const town = JSON.stringify({ version: 1, place: { ...place, method: 'magic' } }, null, 2);
    const problems = problemsOf({ main: { ...set, place: { file: 'town.json' } }, 'town.json': town });
    expect(problems).toEqual([expect.objectContaining({ path: 'place.method', file: 'town.json', ...placeOf(town, '"magic"') })]);
  });

  test('nothing wanted in it', () => {
    expect(problemsOf({ main: { ...set, place: { file: 'x' } }, x: set })).toEqual([
      expect.objectContaining({ path: 'place.file', why: 'that file holds no place' }),
    ]);
    expect(problemsOf({ main: { version: 1, set: { file: 'x' } }, x: { version: 1, place } })).toEqual([
      expect.objectContaining({ path: 'set.file', why: 'that file holds no part of a set' }),
    ]);
  });

  test('something beside the name', () => {
    expect(problemsOf({ main: { ...set, place: { file: 'x', method: 'auto' } }, x: { version: 1, place } }).map((p) => p.path)).toEqual([
      'place.method',
    ]);
  });

  test('its own version counts', () => {
    expect(problemsOf({ main: { ...set, place: { file: 'x' } }, x: { version: 7, place } })).toEqual([
      expect.objectContaining({ path: 'version', file: 'x', given: '7' }),
    ]);
  });

  test('a circle', () => {
    const problems = problemsOf({
      main: { ...set, place: { file: 'a' } },
      a: { version: 1, place: { file: 'b' } },
      b: { version: 1, place: { file: 'a' } },
    });
    expect(problems).toEqual([
      expect.objectContaining({ path: 'place.file', file: 'b', why: expect.stringContaining('circle: a > b > a') }),
    ]);
  });

  test('a file that names itself, whatever it is called', () => {
    const self = { ...set, place: { file: 'main' } };
    expect(problemsOf({ main: self })).toEqual([
      expect.objectContaining({ file: 'main', why: expect.stringContaining('circle: main > main') }),
    ]);
  });

  test('a chain without end', () => {
    const chain = Object.fromEntries(Array.from({ length: 20 }, (_, i) => [`f${i}`, { version: 1, place: { file: `f${i + 1}` } }]));
    const problems = problemsOf({ main: { ...set, place: { file: 'f0' } }, ...chain });
    expect(problems).toEqual([
      expect.objectContaining({ path: 'place.file', file: 'f7', why: expect.stringContaining('more than 8 deep') }),
    ]);
  });

  test('too long', () => {
    const problems = problemsOf({ main: { ...set, place: { file: 'x' } }, x: 'x'.repeat(6e6) });
    expect(problems).toEqual([expect.objectContaining({ file: 'x', why: expect.stringContaining('longer than 5 million') })]);
  });
});

describe('a place alone', () => {
  test('is read from a file that holds no set', () => {
    const read = readPlaceFile(JSON.stringify({ version: 1, place }));
    expect(read).toMatchObject({ ok: true, value: (whole.value as { place: object }).place });
  });
  test('is missing where there is none', () => {
    expect(readPlaceFile(JSON.stringify({ version: 1 }))).toMatchObject({ ok: false, problems: [{ path: 'place', why: 'it is missing' }] });
  });
  test('may be in another file, and its mistakes too', () => {
    const text = JSON.stringify({ version: 1, place: { file: 'x' } });
    expect(readPlaceFile(text, { read: () => JSON.stringify({ version: 1, place }) }).ok).toBe(true);
    const empty = '{"version": 1, "place": {"stations": []}}';
    expect(readPlaceFile(text, { read: () => empty })).toMatchObject({
      ok: false,
      problems: [{ path: 'place.stations', file: 'x', ...placeOf(empty, '[]') }],
    });
    expect(readPlaceFile('nonsense')).toMatchObject({ ok: false, problems: [{ line: 1, column: 1 }] });
  });
});
