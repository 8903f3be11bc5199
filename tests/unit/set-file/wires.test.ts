import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { aerialModel, GivenError, layOut, type WiresDescription, wireStructure } from '#engine';
import { fieldDimension, readSetFile, writeSetFile } from '#set-file';
import { base, type Draft, placeOf } from './base.ts';

const BEAM = {
  kind: 'wires',
  shape: 'beam',
  bearing: 'E',
  elements: [
    { length: '1.53 m', position: '0 m' },
    { length: '1.43 m', position: '0.5 m' },
    { length: '1.36 m', position: '1.2 m' },
  ],
};
const LIST = {
  kind: 'wires',
  shape: 'free-list',
  wires: [
    { from: ['-0.7 m', '0 m', '3 m'], to: ['0.7 m', '0 m', '3 m'], diameter: '12 SWG' },
    { from: ['-0.7 m', '1 m', '3 m'], to: ['0.7 m', '1 m', '3 m'] },
  ],
  feed: { wire: 0 },
  loads: [{ kind: 'parallel', place: { wire: 1, at: '25 %' }, inductance: '100 nH', capacitance: '10 pF' }],
};

function described(aerial: Draft, change: (d: Draft) => void = () => {}): WiresDescription {
  const draft = { ...base(), aerial };
  change(draft);
  const read = readSetFile(JSON.stringify(draft));
  if (!read.ok) throw new Error(JSON.stringify(read.problems, null, 1));
  if (read.value.aerial.kind !== 'wires') throw new Error('it is read as another kind');
  return read.value.aerial;
}

describe('aerials of wires in a maker’s words', () => {
  test('a rod on the set by its length alone: brass, upright, against a box, at the height of the site', () => {
    expect(described({ kind: 'wires', shape: 'rod', length: '75 cm' })).toEqual({
      kind: 'wires',
      shape: {
        kind: 'rod',
        rod: { length: 0.75, diameter: 0.005, metal: 'brass' },
        lean: { angle: 0, bearing: 0 },
        against: { kind: 'box', width: 0.15, depth: 0.05, height: 0.1, metal: 'copper' },
      },
      height: 6,
      ground: { kind: 'free-space' },
    });
  });
  test('without a place it stands a metre and a half high; its own height counts before that of the site', () => {
    const rod = { kind: 'wires', shape: 'rod', length: '75 cm' };
    expect(
      described(rod, (d) => {
        delete d.place;
      }).height,
    ).toBe(1.5);
    expect(described({ ...rod, height: '3 m' }).height).toBe(3);
  });
  test('a wire to earth has a perfect ground to end in', () => {
    const aerial = described({ kind: 'wires', shape: 'rod', length: '75 cm', against: { kind: 'earth-wire', length: '6.5 m' } });
    expect(aerial.ground).toEqual({ kind: 'perfect' });
    expect(aerial.shape).toMatchObject({ against: { earthResistance: 100, diameter: 1e-3, metal: 'copper' } });
  });
  test('a dipole is straight and level unless it is said to bend or slope; V and slope by angle', () => {
    const dipole = { kind: 'wires', shape: 'dipole', length: '1.44 m', orientation: { kind: 'horizontal', broadside: 'E' } };
    expect(described(dipole).shape).toMatchObject({ diameter: 6e-3, includedAngle: Math.PI, slope: 0 });
    expect(layOut(wireStructure(described(dipole))).spans).toHaveLength(2);
    const v = described({ ...dipole, includedAngle: '120 deg', bend: 'forward' });
    expect((v.shape as { includedAngle: number }).includedAngle).toBeCloseTo((2 / 3) * Math.PI, 12);
    expect(Math.max(...wireStructure(v).wires.map((w) => w.to.x))).toBeCloseTo(0.72 * Math.sin(Math.PI / 6), 9);
  });
  test('elements of a beam are counted along the boom, from the back to the front', () => {
    expect(described(BEAM).shape).toMatchObject({
      reflector: { length: 1.53, behind: 0.5 },
      driven: { length: 1.43, element: { kind: 'straight' } },
      directors: [{ length: 1.36, ahead: 0.7 }],
      diameter: 8e-3,
      metal: 'aluminium',
      polarisation: 'horizontal',
    });
    // the place of the zero does not matter
    const moved = BEAM.elements.map((e, i) => ({ ...e, position: `${[30, 80, 150][i]} cm` }));
    const { reflector, directors } = described({ ...BEAM, elements: moved }).shape as Extract<WiresDescription['shape'], { kind: 'beam' }>;
    expect(reflector!.behind).toBeCloseTo(0.5, 12);
    expect(directors[0]!.ahead).toBeCloseTo(0.7, 12);
    const bare = described({ ...BEAM, driven: 1, drivenElement: { kind: 'folded' } }).shape;
    expect(bare).toMatchObject({ reflector: null, driven: { length: 1.53, element: { spacing: 0.05 } }, directors: [{}, {}] });
  });
  test('a loop of several turns lies one wire apart; one turn is flat', () => {
    const loop = { kind: 'wires', shape: 'round-loop', diameter: '30 cm', axis: 'vertical' };
    expect(described(loop).shape).toMatchObject({ turns: 1, windingLength: 0, wireDiameter: 1e-3 });
    expect(described({ ...loop, turns: 4 }).shape).toMatchObject({ windingLength: 8e-3 });
  });
  test('a list of wires with points, places and parts', () => {
    const { shape } = described(LIST);
    expect(shape).toMatchObject({
      wires: [
        { from: { x: -0.7, y: 0, z: 3 }, diameter: expect.closeTo(2.642e-3, 6) },
        { to: { x: 0.7, y: 1, z: 3 }, metal: 'copper' },
      ],
      feed: { wire: 0, at: 0.5 },
      loads: [{ kind: 'parallel', place: { wire: 1, at: 0.25 }, inductance: 100e-9, capacitance: 10e-12 }],
    });
  });
  test('ground by name is that of ITU-R P.527, or a metal plane', () => {
    const dipole = { kind: 'wires', shape: 'dipole', length: '1.44 m', orientation: 'vertical' };
    expect(described({ ...dipole, ground: 'wet' }).ground).toEqual({ kind: 'real', permittivity: 30, conductivity: 0.01 });
    expect(described({ ...dipole, ground: 'perfect' }).ground).toEqual({ kind: 'perfect' });
  });
  test('every number of it can be varied by its path', () => {
    for (const [path, dimension] of [
      ['aerial.elements[1].position', 'length'],
      ['aerial.elements.2.length', 'length'],
      ['aerial.bearing', 'bearing'],
      ['aerial.diameter', 'diameter'],
    ] as const)
      expect(fieldDimension({ ...base(), aerial: BEAM }, path), path).toBe(dimension);
    expect(fieldDimension({ ...base(), aerial: LIST }, 'aerial.wires[0].from[2]')).toBe('length');
    expect(fieldDimension({ ...base(), aerial: LIST }, 'aerial.loads[0].inductance')).toBe('inductance');
    expect(fieldDimension({ ...base(), aerial: LIST }, 'aerial.length')).toBeNull();
  });
});

test('what the engine finds later still has its line: too few segments, an element by its own name', () => {
  const text = JSON.stringify({ ...base(), aerial: { ...BEAM, segments: 2 } }, null, 2);
  const read = readSetFile(text);
  if (!read.ok) throw new Error('it is sound to read');
  let error: unknown = null;
  try {
    aerialModel(read.value.aerial as never).remarks(98e6);
  } catch (e) {
    error = e;
  }
  expect(error).toBeInstanceOf(GivenError);
  expect(read.source.locate((error as GivenError).path)).toMatchObject(placeOf(text, '2\n  },\n  "tank"'));
  expect(read.source.locate('aerial.shape.directors[0].ahead')).toMatchObject(placeOf(text, '"1.2 m"'));
  expect(read.source.locate('aerial.shape.driven.length')).toMatchObject(placeOf(text, '"1.43 m"'));
  // the engine counts the driven element first
  expect(read.source.locate('aerial.wires[1]')).toMatchObject(placeOf(text, '{\n        "length": "1.53 m"'));
  expect(read.source.locate('aerial.wires[0]')).toMatchObject(placeOf(text, '{\n        "length": "1.43 m"'));
  expect(read.source.locate('tank.coil.turns')).toMatchObject(placeOf(text, '"5 1/2"'));
});

const junk = fc.oneof(
  fc.constantFrom(null, true, '', 'x', '1', '-1 mm', '0 m', '1 pF', 1e308, -1, 0, 1, [], {}, [[]], { kind: 'x' }, { point: [] }, [null]),
  fc.jsonValue({ maxDepth: 2 }),
);
function pathsOf(value: unknown, path: string[] = []): string[][] {
  if (typeof value !== 'object' || value === null) return [path];
  return [path, ...Object.entries(value).flatMap(([key, v]) => pathsOf(v, [...path, key]))];
}

test('any value in any place of an aerial of wires is read, or refused with its reason; what is read, can be written', () => {
  const rod = {
    kind: 'wires',
    shape: 'rod',
    length: '75 cm',
    lean: {},
    against: { kind: 'radials', count: 3, length: '70 cm' },
    ground: 'wet',
  };
  const draft = fc.constantFrom<Draft[]>(BEAM, LIST, rod).chain((aerial) =>
    fc
      .array(fc.tuple(fc.constantFrom(...pathsOf(aerial).filter((p) => p.length > 0)), junk), { minLength: 1, maxLength: 2 })
      .map((changes) => {
        const changed = structuredClone(aerial);
        for (const [path, value] of changes) {
          const owner = path
            .slice(0, -1)
            .reduce((o: Draft, key: string) => (typeof o === 'object' && o !== null ? o[key] : undefined), changed);
          if (typeof owner === 'object' && owner !== null) owner[path.at(-1)!] = structuredClone(value);
        }
        return { ...base(), aerial: changed };
      }),
  );
  fc.assert(
    fc.property(draft, (d) => {
      const read = readSetFile(JSON.stringify(d));
      if (read.ok) expect(readSetFile(writeSetFile(read.value))).toMatchObject({ ok: true, value: read.value });
      else for (const p of read.problems) for (const words of [p.given, p.why, p.mend]) expect(words).toMatch(/\S/);
    }),
    { numRuns: 400 },
  );
});
