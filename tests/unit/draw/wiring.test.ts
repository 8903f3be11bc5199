import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawWiring } from '#draw';
import type { SetDescription } from '#engine';
import { arbitrarySet } from './arbitrary-set.ts';
import { readConnections } from './connections.ts';
import { type Drawn, labelled, readDrawing, textsOf } from './drawn.ts';
import { mustBeLegible } from './legible.ts';
import { networkOfSet } from './network-of-set.ts';
import { EXAMPLE_SETS, FURTHER_SETS } from './set-examples.ts';
import type { Element } from './xml.ts';

const CROSSING = /^wires cross/;

/** Pin of the drawing for an end of a part of the engine's network: the coil is one part there, its stretches several here. */
function drawnPin(set: SetDescription, name: string, end: 'a' | 'b'): readonly [part: string, pin: string] {
  if (name === 'aerial' && set.aerial.feeder) return ['feeder', end];
  const stretch = /^coil, (\S+) to (\S+) turns$/.exec(name);
  if (!stretch) return [name, end];
  const turns = Number(stretch[end === 'a' ? 2 : 1]);
  return ['coil', turns === 0 ? 'b' : turns === set.tank.coil.turns ? 'a' : `tap ${turns}`];
}

/** Level or upright strokes that are wires. */
const wiresOf = (d: Drawn): readonly (readonly [number, number, number, number])[] =>
  labelled(d.elements, 'wire').map((e) => ['x1', 'y1', 'x2', 'y2'].map((k) => Number(e.attributes[k])) as never);

function pointsOf(e: Element): readonly (readonly [number, number])[] {
  const n = (k: string) => Number(e.attributes[k]);
  if (e.name === 'circle')
    return [
      [n('cx') - n('r'), n('cy') - n('r')],
      [n('cx') + n('r'), n('cy') + n('r')],
    ];
  if (e.name === 'line')
    return [
      [n('x1'), n('y1')],
      [n('x2'), n('y2')],
    ];
  return e.attributes.points!.split(' ').map((pair) => pair.split(',').map(Number) as [number, number]);
}

interface Body {
  readonly name: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

function bodiesOf(d: Drawn): readonly Body[] {
  const marks = labelled(d.elements, 'body');
  const names = [...new Set(marks.map((e) => e.attributes['data-body']!))];
  return names.map((name) => {
    const points = marks.filter((e) => e.attributes['data-body'] === name).flatMap(pointsOf);
    const [xs, ys] = [points.map((p) => p[0]), points.map((p) => p[1])];
    return { name, left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
  });
}

/** Parts that a wire runs over, and parts that lie on one another. */
function overParts(d: Drawn): readonly string[] {
  const bodies = bodiesOf(d);
  const meets = (a: Omit<Body, 'name'>, b: Omit<Body, 'name'>) =>
    Math.min(a.right, b.right) > Math.max(a.left, b.left) && Math.min(a.bottom, b.bottom) > Math.max(a.top, b.top);
  const air = 0.1;
  return [
    ...wiresOf(d).flatMap(([x1, y1, x2, y2]) => {
      const wire = {
        left: Math.min(x1, x2) - air,
        right: Math.max(x1, x2) + air,
        top: Math.min(y1, y2) - air,
        bottom: Math.max(y1, y2) + air,
      };
      return bodies.filter((b) => meets(wire, b)).map((b) => `a wire over ${b.name}`);
    }),
    ...bodies.flatMap((a, i) =>
      bodies
        .slice(0, i)
        .filter((b) => meets(a, b))
        .map((b) => `${a.name} on ${b.name}`),
    ),
  ];
}

/** The drawing joins what the engine's network joins, and nothing else; it can be read and followed. */
function mustBeRight(set: SetDescription): Drawn {
  const d = readDrawing(drawWiring(set));
  const drawn = readConnections(d);
  expect(drawn.faults.filter((f) => !CROSSING.test(f))).toEqual([]);
  const network = networkOfSet(set);
  const ends = network.flatMap((p) =>
    (['a', 'b'] as const).map((end) => {
      const [part, pin] = drawnPin(set, p.name, end);
      return { end: `${p.name}.${end}`, net: p[end], part, place: drawn.netOf(part, pin) };
    }),
  );
  expect(new Set([...drawn.parts].filter((p) => p !== 'gate'))).toEqual(new Set(ends.map((e) => e.part)));
  expect(ends.filter((e) => e.place === null)).toEqual([]);
  const joined = (same: (x: (typeof ends)[number], y: (typeof ends)[number]) => boolean) =>
    ends.map((x) => `${x.end}: ${ends.flatMap((y) => (x !== y && same(x, y) ? [y.end] : [])).join(' ')}`);
  expect(joined((x, y) => x.place === y.place)).toEqual(joined((x, y) => x.net === y.net));
  expect(overParts(d)).toEqual([]);
  mustBeLegible(d);
  return d;
}

const crossings = (d: Drawn): number => readConnections(d).faults.filter((f) => CROSSING.test(f)).length;

test.each(Object.entries({ ...EXAMPLE_SETS, ...FURTHER_SETS }))('%s is wired as the engine computes it', (_, set) => {
  const d = mustBeRight(set);
  // more than a few and nobody follows the wires
  expect(crossings(d)).toBeLessThanOrEqual(5);
});

test('any set is wired as the engine computes it, and nothing runs into anything', () => {
  fc.assert(
    fc.property(arbitrarySet, (set) => {
      mustBeRight(set);
    }),
    { numRuns: 12 },
  );
});

describe('a channel', () => {
  const base = EXAMPLE_SETS['channel-detector.json']!;
  const netsOf = (change: object) => {
    const set = { ...base, detector: { ...base.detector, ...change } as SetDescription['detector'] };
    const drawn = readConnections(mustBeRight(set));
    return { gate: drawn.netOf('gate', 'gate'), tank: drawn.netOf('detector', 'a'), output: drawn.netOf('detector', 'b') };
  };

  test('has its gate on the tank, on the output, or on neither', () => {
    const onTank = netsOf({ gateDrive: 1, gateBias: 0 });
    expect(onTank.gate).toBe(onTank.tank);
    const onOutput = netsOf({ gateDrive: 0, gateBias: 0 });
    expect(onOutput.gate).toBe(onOutput.output);
    const biased = netsOf({ gateDrive: 1, gateBias: 0.2 });
    expect([biased.tank, biased.output]).not.toContain(biased.gate);
  });
});

describe('what stands beside the parts', () => {
  const base = EXAMPLE_SETS['rod-and-drop-wire.json']!;
  const texts = (set: SetDescription, part: string, options = {}) => textsOf(readDrawing(drawWiring(set, options)), 'names', part);

  test('values with their prefix, taps by their turns', () => {
    const set = { ...base, phones: { ...base.phones, bypass: 220e-12, load: 1e6 } };
    expect(texts(set, 'bypass')).toEqual(['bypass', '220 pF']);
    expect(texts(set, 'load')).toEqual(['load', '1 MΩ']);
    expect(texts(base, 'coil', { inductance: 320e-9 })).toEqual(['coil', '320 nH', '5 turns']);
    const { aerialCoupling } = base.tank;
    expect(aerialCoupling).toMatchObject({ kind: 'tap', turns: 0.25 });
    expect(texts(base, 'aerial tap')).toEqual(['tap 1/4 turn']);
  });

  test.each(['Kopfhörer aus einem alten Feldtelefon, イヤホン, with a name that will not end and goes on', 'سماعة أذن', 'W'.repeat(70)])(
    'the name %s stands whole and on the sheet',
    (name) => {
      const set = { ...base, phones: { ...base.phones, earpiece: { ...base.phones.earpiece, name } } };
      expect(texts(set, 'earpiece').join('').replaceAll(' ', '')).toContain(name.replaceAll(' ', ''));
      mustBeRight(set);
    },
  );

  test('each tap meets the coil at its own turn, counted from the cold end', () => {
    const set = {
      ...base,
      tank: { ...base.tank, aerialCoupling: { kind: 'tap', turns: 1 }, detectorCoupling: { kind: 'tap', turns: 4 } },
    } as const;
    const d = readDrawing(drawWiring(set));
    const xOf = (pin: string) => Number(labelled(d.elements, 'pin', pin).find((e) => e.attributes['data-part'] === 'coil')!.attributes.x2);
    const [cold, hot] = [xOf('b'), xOf('a')];
    expect(set.tank.coil.turns).toBe(5);
    expect((xOf('tap 1') - cold) / (hot - cold)).toBeCloseTo(1 / 5, 2);
    expect((xOf('tap 4') - cold) / (hot - cold)).toBeCloseTo(4 / 5, 2);
  });
});
