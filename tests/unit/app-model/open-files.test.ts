import { expect, test } from 'vitest';
import { type GivenFile, openFiles } from '../../../src/app/model/open-files.ts';
import { savedFile } from '../../../src/app/model/saved-file.ts';

const file = (name: string, text: string, size = text.length): GivenFile => ({ name, size, text: async () => text });
const SET = '{"version":1,"name":"Mine","place":{"file":"town.json"},"tank":{}}';

test('the set is opened, what was dropped with it stands beside it', async () => {
  const opened = await openFiles([file('town.json', '{"version":1,"place":{}}'), file('mine.json', SET), file('law.csv', 'V,A\n0,0')], {
    'old.json': '{}',
  });
  expect(opened.work?.document).toEqual(JSON.parse(SET));
  expect(Object.keys(opened.files).sort()).toEqual(['law.csv', 'old.json', 'town.json']);
  expect(opened.work?.files).toEqual(opened.files);
  expect(opened.notices).toEqual([]);
});

test('no set among them: they are at hand, and the person is told', async () => {
  const { work, files, notices } = await openFiles([file('town.json', '{"version":1,"place":{}}')]);
  expect(work).toBeNull();
  expect(files['town.json']).toContain('place');
  expect(notices.join()).toContain('refers to them by name');
});

test('what cannot be taken is named with the reason, the rest is opened', async () => {
  const { work, notices } = await openFiles([
    file('big.json', '{}', 60e6),
    file('broken.json', '{"tank":'),
    file('sly.json', '{"tank":{"__proto__":{}}}'),
    file('photo.csv', 'PNG\u0000'),
    { name: 'gone.json', size: 3, text: () => Promise.reject(new Error('it could not be read')) },
    file('mine.json', SET),
    file('second.json', SET),
  ]);
  expect(work?.document).toEqual(JSON.parse(SET));
  for (const [name, why] of [
    ['big.json', '60 MB'],
    ['broken.json', 'not JSON'],
    ['sly.json', '__proto__'],
    ['photo.csv', 'not text'],
    ['gone.json', 'could not be read'],
    ['second.json', 'a set too'],
  ] as const)
    expect(notices.find((n) => n.startsWith(name))).toContain(why);
});

test('saved: JSON that reads as it was, under a name a file can have', () => {
  const document = { version: 1, name: 'Dipole & small coil: 2½ turns', tank: { turns: '2 1/2' } };
  const saved = savedFile(document);
  expect(saved.name).toBe('dipole-small-coil-2½-turns.json');
  expect(JSON.parse(saved.text)).toEqual(document);
  expect(saved.text.endsWith('}\n')).toBe(true);
  expect(savedFile({ name: '../../..' }).name).toBe('set.json');
  expect(savedFile(null).name).toBe('set.json');
});
