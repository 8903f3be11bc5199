import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readSetFile, rewriteSetFile, type SetFile, writeSetFile } from '#set-file';

const options = { read: (name: string) => readFileSync(`examples/${name}`, 'utf8') };
const examples = readdirSync('examples').filter((f) => f.endsWith('.json'));
const textOf = (f: string): string => readFileSync(`examples/${f}`, 'utf8');
const setOf = (text: string): SetFile => {
  const read = readSetFile(text, options);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
};
const sets = examples.filter((f) => readSetFile(textOf(f), options).ok);

test.each(sets)('%s: what did not change stays as it was written', (f) => {
  const text = textOf(f);
  expect(JSON.parse(rewriteSetFile(text, setOf(text), [], options))).toEqual(JSON.parse(text));
});

test.each(sets)('%s: a change is in the file, reads back exactly, and touches nothing else', (f) => {
  const text = textOf(f);
  const set = setOf(text);
  const changed = { ...set, phones: { ...set.phones, bypass: 333e-12 } };
  const again = rewriteSetFile(text, changed, [], options);
  expect(writeSetFile(setOf(again))).toBe(writeSetFile(changed));
  const [a, b] = [JSON.parse(text), JSON.parse(again)];
  expect({ ...b, phones: { ...b.phones, bypass: a.phones.bypass } }).toEqual(a);
});

test('a part that was put in is written by its name, other files stay references', () => {
  const text = textOf('dipole-and-small-coil.json');
  const other = JSON.parse(text);
  other.detector = { part: 'zero-bias-schottky' };
  other.phones.earpiece = { part: 'crystal-earplug' };
  const wanted = setOf(JSON.stringify(other));
  const again = JSON.parse(rewriteSetFile(text, wanted, ['galena-contact', 'crystal-earplug', 'zero-bias-schottky'], options));
  expect(again.detector).toEqual({ part: 'zero-bias-schottky' });
  expect(again.phones.earpiece).toEqual({ part: 'crystal-earplug' });
  expect(again.place).toEqual({ file: 'fenmarket.json' });
});

test('another form of the same thing replaces it whole; what is taken out is gone', () => {
  const text = textOf('dipole-and-small-coil.json');
  const set = setOf(text);
  const { load: _, ...phones } = set.phones;
  const changed: SetFile = {
    ...set,
    phones,
    aerial: { kind: 'whip', length: 0.75, diameter: 5e-3, metal: 'brass', counterpoise: { kind: 'plane' } },
  };
  const again = JSON.parse(rewriteSetFile(text, changed, [], options));
  expect(again.aerial.kind).toBe('whip');
  expect(again.aerial.orientation).toBeUndefined();
  expect(again.phones.load).toBeUndefined();
});
