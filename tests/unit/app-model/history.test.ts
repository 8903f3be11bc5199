import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { beginning, edited, type History, letGo, redone, undone } from '../../../src/app/model/history.ts';

const many = <T>(h: History<T>, step: (h: History<T>) => History<T>, times: number): History<T> =>
  Array.from({ length: times }).reduce<History<T>>((now) => step(now), h);

describe('undo and redo', () => {
  test('any edits: undone all the way the document is the first, redone all the way the last', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.integer(), fc.constantFrom(null, 'a', 'b')), { maxLength: 50 }), (edits) => {
        const last = edits.reduce((h, [v, drag]) => edited(h, { v }, drag), beginning<{ v: number }>({ v: 0 }));
        const first = many(last, undone, 60);
        expect(first.now).toEqual({ v: 0 });
        expect(first.past).toEqual([]);
        expect(many(first, redone, 60).now).toBe(last.now);
      }),
    );
  });

  test('a drag is one step, however many edits it had; another drag, or the same slider taken up again, is another', () => {
    let h = beginning(0);
    for (const v of [1, 2, 3]) h = edited(h, v, 'tank.coil.turns');
    expect(undone(h).now).toBe(0);
    h = edited(h, 4, 'tank.coil.pitch');
    expect(undone(h).now).toBe(3);
    h = edited(letGo(h), 5, 'tank.coil.pitch');
    expect(undone(h).now).toBe(4);
    h = edited(edited(h, 6), 7);
    expect(undone(h).now).toBe(6);
  });

  test('an edit after undoing gives up what was undone; nothing to undo or redo changes nothing', () => {
    const h = edited(undone(edited(edited(beginning('a'), 'b'), 'c')), 'd');
    expect(h.future).toEqual([]);
    expect(undone(h).now).toBe('b');
    const empty = beginning(1);
    expect(undone(empty)).toBe(empty);
    expect(redone(empty)).toBe(empty);
    expect(edited(empty, 1)).toBe(empty);
  });

  test('a drag undone is not gone on with', () => {
    const h = edited(undone(edited(beginning(0), 1, 'x')), 2, 'x');
    expect(undone(h).now).toBe(0);
  });

  test('the past does not grow without end', () => {
    const h = Array.from({ length: 1000 }).reduce<History<number>>((now, _, i) => edited(now, i + 1), beginning(0));
    expect(h.past.length).toBeLessThanOrEqual(200);
    expect(undone(h).now).toBe(999);
  });
});
