import { expect, test } from 'vitest';
import { nearestWord } from '#units';

const keys = ['turns', 'pitch', 'innerDiameter', 'wireDiameter', 'maximum', 'minimum', 'leadLength'];
test('one slip of the pen finds the word', () => {
  for (const [typed, meant] of [
    ['turn', 'turns'],
    ['trun s'.replace(' ', ''), 'turns'],
    ['pich', 'pitch'],
    ['inner_diameter', 'innerDiameter'],
    ['WIREDIAMETER', 'wireDiameter'],
    ['max', 'maximum'],
    ['leadlenght', 'leadLength'],
  ] as const)
    expect(nearestWord(typed, keys)).toBe(meant);
});
test('a word unlike any known finds none', () => {
  expect(nearestWord('banana', keys)).toBeNull();
  expect(nearestWord('', keys)).toBeNull();
});
