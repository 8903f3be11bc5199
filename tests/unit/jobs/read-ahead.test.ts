import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readAhead } from '../../../src/jobs/reading.ts';
import { bench, ok } from './examples.ts';

/** Texts that mean the same and are different documents to the bench. */
const text = readFileSync('examples/dipole-and-small-coil.json', 'utf8');
const known = readAhead(JSON.stringify(JSON.parse(text)), (name) => readFileSync(`examples/${name}`, 'utf8'));
/** as it comes over the network */
const handed: typeof known = JSON.parse(JSON.stringify(known));
const plain = { text, files: known.files };
const jobs = bench();

test('a document read ahead is plain data, with the files it refers to', () => {
  expect(handed).toEqual(known);
  expect(Object.keys(known.files)).toEqual(['fenmarket.json']);
});

test('a document read ahead comes to the same as one that is read', async () => {
  expect(ok(await jobs.call('outline', handed))).toEqual(ok(await jobs.call('outline', plain)));
  const read = ok(await jobs.call('evaluate', { document: plain }));
  expect(ok(await jobs.call('evaluate', { document: handed }))).toEqual(read);
  const advice = ok(await jobs.call('advise', { document: handed, station: 0 }));
  expect(advice.bestByStage.length).toBeGreaterThan(1);
  expect(advice).toEqual(ok(await jobs.call('advise', { document: plain, station: 0 })));
});

test('what the engine refuses in it is found in its text', async () => {
  const { tank } = handed.ahead.file;
  const file = { ...handed.ahead.file, tank: { ...tank, coil: { ...tank.coil, turns: -1 } } } as typeof handed.ahead.file;
  const answer = await jobs.call('outline', { ...handed, text: `\n${text}`, ahead: { ...handed.ahead, file } });
  if (answer.ok) throw new Error('it was taken');
  const [problem] = answer.problems;
  expect(problem).toMatchObject({ path: 'tank.coil.turns', given: '-1' });
  expect(`\n${text}`.split('\n')[problem!.line! - 1]).toContain('"turns": 5');
});

test('a document that cannot be read is not read ahead', () => {
  expect(() => readAhead('{"version":1}', () => '')).toThrow(/tank/);
});
