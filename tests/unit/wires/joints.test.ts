import { describe, expect, test } from 'vitest';
import { type AerialWire, GivenError, layOut, type WireGround, type WireLoad, type WireStructure, wireAerial, wireAerialOf } from '#engine';
import { described, shapes } from './shapes.ts';

const point = (x: number, y: number, z: number) => ({ x, y, z });
const wire = (from: AerialWire['from'], to: AerialWire['to'], diameter = 0.004): AerialWire => ({ from, to, diameter, metal: 'copper' });
const structure = (wires: readonly AerialWire[], more: Partial<WireStructure> = {}): WireStructure => ({
  wires,
  feed: { wire: 0, at: 0.5 },
  loads: [],
  ground: { kind: 'free-space' },
  ...more,
});
const upright = wire(point(0, 0, 0), point(0, 0, 1));

function refusal(make: () => unknown): GivenError {
  try {
    make();
  } catch (error) {
    expect(error).toBeInstanceOf(GivenError);
    return error as GivenError;
  }
  throw new Error('nothing was refused');
}

describe('what is joined', () => {
  test('ends at one point make one node', () => {
    const l = layOut(structure([upright, wire(point(0, 0, 1), point(1, 0, 1)), wire(point(0, 0, 1), point(0, 1, 1))]));
    expect(l.spans).toHaveLength(4);
    expect(l.nodes).toHaveLength(5);
  });
  test('ends within the thickness of the wire are joined', () => {
    const l = layOut(structure([upright, wire(point(0.0015, 0, 1), point(1, 0, 1))]));
    expect(l.nodes).toHaveLength(4);
  });
  test('an end on the middle of another wire cuts it and is joined', () => {
    const l = layOut(structure([upright, wire(point(0, 0, 0.25), point(1, 0, 0.25))]));
    expect(l.spans.filter((s) => s.wire === 0)).toHaveLength(3);
    const joint = l.nodes.findIndex((n) => n.z === 0.25 && n.x === 0);
    expect(l.spans.filter((s) => s.from === joint || s.to === joint)).toHaveLength(3);
  });
  test('a feed by its coordinates is the feed by wire and fraction', () => {
    const a = layOut(structure([upright], { feed: { point: point(0.001, 0, 0.3) } }));
    const b = layOut(structure([upright], { feed: { wire: 0, at: 0.3 } }));
    expect(a.nodes[a.spans[a.feed.span]!.from]!.z).toBeCloseTo(b.nodes[b.spans[b.feed.span]!.from]!.z, 9);
  });
  test('identity: wires listed in another order and direction make the same aerial', () => {
    const wires = [upright, wire(point(0, 0, 1), point(0.7, 0, 1.2)), wire(point(0, 0, 1), point(-0.3, 0.4, 1))];
    const turned = [2, 0, 1].map((i) => wire(wires[i]!.to, wires[i]!.from));
    const z = wireAerialOf(structure(wires, { feed: { point: point(0, 0, 0.4) } }), null).at(98e6, { azimuth: 0, elevation: 0 }).impedance;
    const w = wireAerialOf(structure(turned, { feed: { point: point(0, 0, 0.4) } }), null).at(98e6, { azimuth: 0, elevation: 0 }).impedance;
    expect(w.re / z.re).toBeCloseTo(1, 4);
    expect(w.im / z.im).toBeCloseTo(1, 4);
  });
});

describe('what is refused, where and why', () => {
  const perfect: WireGround = { kind: 'perfect' };
  const free: WireGround = { kind: 'free-space' };
  const cases: readonly (readonly [string, Partial<WireStructure> & { wires: readonly AerialWire[] }, string, RegExp])[] = [
    ['no wires', { wires: [] }, 'aerial.wires', /at least one/],
    ['no thickness', { wires: [wire(point(0, 0, 0), point(0, 0, 1), 0)] }, 'aerial.wires[0].diameter', /thickness/],
    ['thickness that is no number', { wires: [wire(point(0, 0, 0), point(0, 0, 1), Number.NaN)] }, 'aerial.wires[0].diameter', /thickness/],
    ['no length', { wires: [wire(point(0, 0, 1), point(0, 0, 1))] }, 'aerial.wires[0]', /longer/],
    ['a coordinate that is no number', { wires: [wire(point(0, Number.NaN, 0), point(0, 0, 1))] }, 'aerial.wires[0].from.y', /coordinate/],
    [
      'a crossing without a joint',
      { wires: [upright, wire(point(-0.5, 0.002, 0.3), point(0.5, 0.002, 0.3))] },
      'aerial.wires[1]',
      /without a joint/,
    ],
    ['wires inside each other', { wires: [upright, wire(point(0, 0.002, 0.3), point(0, 0.002, 1.4))] }, 'aerial.wires[1]', /nearer than/],
    ['the same wire twice', { wires: [upright, upright] }, 'aerial.wires[1]', /nearer than/],
    ['ends that nearly meet', { wires: [upright, wire(point(0.003, 0, 1), point(1, 0, 1))] }, 'aerial.wires[1]', /joined or not/],
    [
      'an end that touches two wires at two places',
      { wires: [upright, wire(point(0.0065, -1, 0.3), point(0.0065, 1, 0.3)), wire(point(0.003, 0, 0.3), point(1, 0, 0.9))] },
      'aerial.wires[2]',
      /which of them/,
    ],
    [
      'two joints within the thickness',
      { wires: [upright, wire(point(0, 0, 0.3), point(1, 0, 0.3)), wire(point(-0.003, 0, 0.3039), point(-1, 0, 0.3039))] },
      'aerial.wires[2]',
      /one joint or two/,
    ],
    ['a feed off the wires', { wires: [upright], feed: { point: point(0.1, 0, 0.3) } }, 'aerial.feed', /on a wire/],
    ['a feed on no wire', { wires: [upright], feed: { wire: 3, at: 0.5 } }, 'aerial.feed.wire', /numbered/],
    ['a feed beyond the end', { wires: [upright], feed: { wire: 0, at: 1.2 } }, 'aerial.feed.at', /fraction/],
    ['a feed at a free end', { wires: [upright], feed: { wire: 0, at: 1 } }, 'aerial.feed', /no current/],
    [
      'a feed on a joint in the middle',
      { wires: [upright, wire(point(0, 0, 0.5), point(1, 0, 0.5))] },
      'aerial.feed',
      /which of the wires/,
    ],
    [
      'a load at a free end',
      { wires: [upright], loads: [{ place: { wire: 0, at: 0 }, kind: 'series', resistance: 1 }] },
      'aerial.loads[0].place',
      /no current/,
    ],
    [
      'a negative load',
      { wires: [upright], loads: [{ place: { wire: 0, at: 0.2 }, kind: 'series', inductance: -1 }] },
      'aerial.loads[0].inductance',
      /negative/,
    ],
    [
      'a capacitor of nothing',
      { wires: [upright], loads: [{ place: { wire: 0, at: 0.2 }, kind: 'series', capacitance: 0 }] },
      'aerial.loads[0].capacitance',
      /break/,
    ],
    ['wires underground', { wires: [wire(point(0, 0, -0.5), point(0, 0, 1))], ground: perfect }, 'aerial.wires[0]', /below/],
    [
      'a wire flat on the ground',
      { wires: [wire(point(0, 0, 0.001), point(1, 0, 0))], ground: perfect },
      'aerial.wires[0]',
      /conducting plane/,
    ],
    ['a piece too short between joints', { wires: [upright], feed: { wire: 0, at: 0.997 } }, 'aerial.wires[0]', /too short/],
    [
      'a load beside the feed within the thickness',
      { wires: [upright], loads: [{ place: { wire: 0, at: 0.503 }, kind: 'series', resistance: 5 }] as WireLoad[] },
      'aerial.wires[0]',
      /too short/,
    ],
  ];
  for (const [name, given, path, why] of cases)
    test(name, () => {
      const error = refusal(() => layOut(structure(given.wires, { ground: free, ...given })));
      expect(error.path).toBe(path);
      expect(error.why).toMatch(why);
      expect(error.mend.length).toBeGreaterThan(5);
    });

  test('more unknowns than the limit, by a wire too long for the frequency', () => {
    const error = refusal(() =>
      wireAerialOf(structure([wire(point(0, 0, 0), point(200, 0, 0))]), null).at(98e6, { azimuth: 0, elevation: 0 }),
    );
    expect(error.path).toBe('aerial.wires');
    expect(error.why).toMatch(/at most/);
  });
  test('segments forced to fewer than there are pieces, shorter than the wire is thick, or too long', () => {
    const ask = (segments: number) => () => wireAerialOf(structure([upright]), segments).at(400e6, { azimuth: 0, elevation: 0 });
    expect(refusal(ask(1)).path).toBe('aerial.segments');
    expect(refusal(ask(2)).why).toMatch(/wavelength/);
    expect(refusal(ask(2.5)).path).toBe('aerial.segments');
    expect(refusal(ask(700)).why).toMatch(/shorter than its radius/);
  });
  test('a frequency that is none', () => {
    expect(refusal(() => wireAerial(described('dipole', 'copper')).at(0, { azimuth: 0, elevation: 0 })).path).toBe('frequency');
  });
  test('a wire to earth without the earth', () => {
    const given = { ...described('rod with wire to earth', 'copper'), ground: free };
    expect(refusal(() => wireAerial(given)).path).toBe('aerial.ground');
  });
  test('shapes that cannot be, each with its path', () => {
    const s = shapes('copper');
    const wrong: readonly (readonly [string, object, string])[] = [
      ['dipole', { length: -1 }, 'aerial.shape.length'],
      ['dipole', { includedAngle: 0 }, 'aerial.shape.includedAngle'],
      ['dipole', { slope: Number.NaN }, 'aerial.shape.slope'],
      ['folded dipole', { spacing: 0.005 }, 'aerial.shape.spacing'],
      ['three-element beam', { reflector: { length: 1.5, behind: 0 } }, 'aerial.shape.reflector.behind'],
      [
        'three-element beam',
        {
          directors: [
            { length: 1.3, ahead: 0.5 },
            { length: 1.3, ahead: 0.4 },
          ],
        },
        'aerial.shape.directors[1].ahead',
      ],
      [
        'beam with folded driven element',
        { driven: { length: 1.4, element: { kind: 'folded', spacing: 0.5 } } },
        'aerial.shape.driven.element.spacing',
      ],
      ['10 cm loop', { sides: 2 }, 'aerial.shape.sides'],
      ['10 cm loop', { wireDiameter: 0.02 }, 'aerial.shape.wireDiameter'],
      ['loop of three turns', { windingLength: 0.004 }, 'aerial.shape.windingLength'],
      ['loop of three turns', { turns: 2.5 }, 'aerial.shape.turns'],
      ['square full-wave loop', { side: 0 }, 'aerial.shape.side'],
      [
        'rod with radials',
        { against: { ...(s['rod with radials'] as { against: object }).against, count: 0 } },
        'aerial.shape.against.count',
      ],
      [
        'rod with wire to earth',
        { against: { kind: 'earth-wire', length: 1, diameter: 0.001, metal: 'copper', earthResistance: 1 } },
        'aerial.shape.against.length',
      ],
      [
        'leaning rod with box',
        { against: { kind: 'box', width: 0, depth: 0.1, height: 0.1, metal: 'copper' } },
        'aerial.shape.against.width',
      ],
    ];
    for (const [name, change, path] of wrong) {
      const given = described(name, 'copper');
      const error = refusal(() => wireAerial({ ...given, shape: { ...given.shape, ...change } as typeof given.shape }));
      expect(error.path, name).toBe(path);
    }
  });
});
