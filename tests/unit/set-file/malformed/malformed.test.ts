import { expect, test } from 'vitest';
import { type Problem, readSetFile } from '#set-file';
import { base, baseText, placeOf } from '../base.ts';
import { contradictionsOfPlace } from './contradictions-of-place.ts';
import { contradictionsOfSet } from './contradictions-of-set.ts';
import { notJson } from './not-json.ts';
import { wiresAerials } from './wires-aerials.ts';
import { wrongParts } from './wrong-parts.ts';
import { wrongValues } from './wrong-values.ts';

const rows = [...notJson, ...wrongValues, ...contradictionsOfSet, ...contradictionsOfPlace, ...wiresAerials, ...wrongParts];

test('there are sixty at least, each of its own', () => {
  expect(rows.length).toBeGreaterThanOrEqual(60);
  expect(new Set(rows.map((r) => r.what)).size).toBe(rows.length);
});

test('what they spoil is sound', () => {
  expect(readSetFile(baseText())).toMatchObject({ ok: true });
});

for (const { what, text, path, why, mend, at } of rows)
  test(`refused: ${what}`, () => {
    const read = readSetFile(text);
    if (read.ok) throw new Error('it was read');
    const problem = read.problems.find((p) => p.path === path);
    if (!problem) throw new Error(`no problem at ${path}: ${JSON.stringify(read.problems, null, 1)}`);
    expect(problem.why).toMatch(why);
    expect(problem.mend).toMatch(mend);
    expect(problem.given).not.toBe('');
    expect(problem.given.length).toBeLessThan(90);
    expect(problem.file).toBeNull();
    expect({ line: problem.line, column: problem.column }).toEqual(placeOf(text, at));
    // one mistake, one problem
    expect(read.problems).toHaveLength(1);
  });

test('many mistakes are told of all at once, in the order of the file', () => {
  const draft = base();
  draft.place.stations[0].power = '8 kV';
  draft.aerial.lenght = draft.aerial.length;
  delete draft.aerial.length;
  draft.tank.coil.turns = 0;
  draft.detector.kind = 'diode';
  const read = readSetFile(JSON.stringify(draft, null, 2)) as { ok: false; problems: readonly Problem[] };
  expect(read.problems.map((p) => p.path)).toEqual(['place.stations[0].power', 'aerial.lenght', 'tank.coil.turns', 'detector.kind']);
  expect(read.problems.map((p) => p.line)).toEqual(read.problems.map((p) => p.line).toSorted((a, b) => a - b));
});

test('a byte order mark at the beginning, line ends of any kind and a final newline are no mistakes', () => {
  for (const text of [`\ufeff${baseText()}`, baseText().replaceAll('\n', '\r\n'), baseText().replaceAll('\n', '\r'), `${baseText()}\n\n`])
    expect(readSetFile(text).ok).toBe(true);
});

test('lines and columns are right after any line end', () => {
  for (const end of ['\n', '\r\n', '\r']) {
    const read = readSetFile(['{', '  "version": 1,', '  "nane": "x"', '}'].join(end));
    if (read.ok) throw new Error('it was read');
    expect(read.problems.find((p) => p.path === 'nane')).toMatchObject({ line: 3, column: 3 });
  }
});
