import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawSchematic } from '#draw';
import type { SetDescription } from '#engine';
import { arbitrarySet } from './arbitrary-set.ts';
import { readConnections } from './connections.ts';
import { type Drawn, readDrawing, textsOf } from './drawn.ts';
import { mustBeLegible } from './legible.ts';
import { networkOfSet } from './network-of-set.ts';
import { EXAMPLE_SETS, FURTHER_SETS } from './set-examples.ts';

/** The drawing joins what the network joins, and nothing else. */
function mustAgree(set: SetDescription): Drawn {
  const d = readDrawing(drawSchematic(set));
  const drawn = readConnections(d);
  expect(drawn.faults).toEqual([]);
  const network = networkOfSet(set);
  const feeder = set.aerial.feeder !== undefined;
  const name = (n: string) => (n === 'aerial' && feeder ? 'feeder' : n);
  const expected = new Set(network.map((p) => name(p.name)));
  const found = new Set([...drawn.parts].filter((p) => p !== 'gate' && p !== 'aerial end of feeder' && !(feeder && p === 'aerial')));
  expect(found).toEqual(expected);
  const ends = network.flatMap((p) =>
    (['a', 'b'] as const).map((pin) => ({ pin: `${p.name}.${pin}`, net: p[pin], place: drawn.netOf(name(p.name), pin) })),
  );
  const joined = (same: (x: (typeof ends)[number], y: (typeof ends)[number]) => boolean) =>
    ends.map((x) => `${x.pin}: ${ends.flatMap((y) => (x !== y && same(x, y) ? [y.pin] : [])).join(' ')}`);
  expect(joined((x, y) => x.place === y.place)).toEqual(joined((x, y) => x.net === y.net));
  return d;
}

test.each(Object.entries({ ...EXAMPLE_SETS, ...FURTHER_SETS }))('%s is joined as the engine computes it', (_, set) => {
  mustBeLegible(mustAgree(set));
});

test('any set is joined as the engine computes it, and nothing runs into anything', () => {
  fc.assert(
    fc.property(arbitrarySet, (set) => {
      mustBeLegible(mustAgree(set));
    }),
    { numRuns: 120 },
  );
});

describe('what stands beside the parts', () => {
  const base = EXAMPLE_SETS['rod-and-drop-wire.json']!;
  const texts = (set: SetDescription, part: string, options = {}) => textsOf(readDrawing(drawSchematic(set, options)), 'names', part);

  test('values with their prefix', () => {
    const set = { ...base, phones: { ...base.phones, bypass: 220e-12, load: 1e6 } };
    expect(texts(set, 'bypass')).toEqual(['bypass', '220 pF']);
    expect(texts(set, 'load')).toEqual(['load', '1 MΩ']);
  });

  test('the coil by its turns, and by its inductance where that is known', () => {
    expect(texts(base, 'coil')).toEqual(['coil', '5 turns']);
    expect(texts(base, 'coil', { inductance: 320e-9 })).toEqual(['coil', '320 nH', '5 turns']);
  });

  test('a channel that conducts without a voltage on its gate is drawn unbroken', () => {
    const channel = EXAMPLE_SETS['channel-detector.json']!;
    const pieces = (threshold: number) => {
      const d = readDrawing(drawSchematic({ ...channel, detector: { ...channel.detector, threshold } as SetDescription['detector'] }));
      return d.elements.filter((e) => e.name === 'line' && e.attributes['stroke-width'] === '0.7').length;
    };
    expect(pieces(-1)).toBe(1);
    expect(pieces(0.4)).toBe(3);
  });

  test('a long name stands whole', () => {
    const name = 'Kopfhörer aus einem alten Feldtelefon, イヤホン, with a name that will not end';
    const set = { ...base, phones: { ...base.phones, earpiece: { ...base.phones.earpiece, name } } };
    expect(texts(set, 'earpiece').join(' ')).toContain(name);
  });

  test('the words tell the way from the aerial to the ear', () => {
    const desc = readDrawing(drawSchematic(base)).elements.find((e) => e.name === 'desc')!;
    expect(desc.children.join('')).toMatch(/^Aerial: rod 700 mm against drop wire 700 mm, joined at tap/);
  });
});
