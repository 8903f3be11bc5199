import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { AerialDescription, SetDescription, WireShape } from '#engine';
import { armsOf, Builder, buildable, chanceFrom, Draws, drawDesign, spaceOf } from '#find';
import { MOVES, neighboursOf } from '../../../../src/find/search/moves.ts';
import { FULL, type Given, mediumWave, requestOf } from './drawers.ts';

const sizes = (least: number, most: number) => fc.integer({ min: least, max: most });
const library = fc.subarray(
  [
    'air-variable-20',
    'air-trimmer-12',
    'film-gang-fm-20',
    'air-gang-365',
    'low-barrier-schottky',
    'germanium-point-contact',
    'vhf-jfet',
    'ceramic-earpiece',
    'balanced-armature-300',
    'matching-100k-to-600',
    'bare-copper-1mm',
    'enamelled-copper-0.2mm',
  ],
  { minLength: 4 },
);
const arbitraryDrawer: fc.Arbitrary<Given> = fc.record(
  {
    fromLibrary: library,
    wires: fc.dictionary(
      fc.constantFrom('a', 'b', 'c'),
      fc.record({
        values: sizes(2, 30).map((t) => ({ wireDiameter: `${t / 10} mm` })),
        length: sizes(2, 400).map((t) => `${t / 10} m`),
        tapEvery: fc.constantFrom(0.25, 0.5, 1, 3),
      }),
      { noNullPrototype: true },
    ),
    formers: fc.array(
      fc.record(
        {
          diameter: fc.oneof(sizes(3, 80), sizes(5, 14)).map((d) => `${d} mm`),
          length: sizes(3, 150).map((l) => `${l} mm`),
          stays: fc.constant({ permittivity: 3 }),
        },
        { requiredKeys: ['diameter'] },
      ),
      { maxLength: 8 },
    ),
    rods: fc.array(
      fc.record({ length: sizes(10, 160).map((l) => `${l} cm`), diameter: sizes(2, 12).map((d) => `${d} mm`), count: sizes(1, 8) }),
      { maxLength: 2 },
    ),
    resistors: fc.subarray(['100 k', '470 k', '1 M']),
    chokes: fc.array(fc.record({ inductance: fc.constantFrom('5 H', '40 H'), resistance: fc.constantFrom('400 ohm', '3 k') }), {
      maxLength: 2,
    }),
    fixedCapacitors: fc.array(fc.constantFrom('2.2 pF', '10 pF', '220 pF'), { maxLength: 4 }),
    garden: fc.record({ length: sizes(4, 40).map((l) => `${l} m`), height: sizes(2, 9).map((h) => `${h} m`) }),
  },
  { requiredKeys: ['fromLibrary', 'wires', 'formers'] },
);

/** What the drawers must have brought about, lest the property say nothing of it. */
const FEATURES = [
  'V',
  'beam of 2',
  'beam of 3',
  'choke',
  'coil',
  'dipole',
  'drop-wire',
  'folded-dipole',
  'link beside',
  'link elsewhere',
  'piezo and transformer',
  'radials',
  'round-loop',
  'square-loop',
  'wire-to-earth',
];

function featuresOf({ aerial, tank, phones }: SetDescription): string[] {
  const { aerialCoupling: joint, coil } = tank;
  return [
    aerial.kind === 'wires' ? shapeOf(aerial.shape) : aerial.kind,
    ...(joint?.kind === 'link' && coil.kind === 'geometry'
      ? [joint.innerDiameter === coil.innerDiameter ? 'link beside' : 'link elsewhere']
      : []),
    ...(phones.choke ? ['choke'] : []),
    ...(phones.transformer && phones.earpiece.kind === 'piezo' ? ['piezo and transformer'] : []),
  ];
}

function shapeOf(shape: WireShape): string {
  if (shape.kind === 'rod') return shape.against.kind;
  if (shape.kind === 'beam') return `beam of ${1 + shape.directors.length + (shape.reflector ? 1 : 0)}`;
  return shape.kind === 'dipole' && shape.includedAngle < 3 ? 'V' : shape.kind;
}

describe('what is offered can be built', { timeout: 300_000 }, () => {
  test('property: of any drawer, drawn by chance and changed in every way, the independent checker finds nothing wrong', () => {
    let made = 0;
    const shapes = new Set<string>();
    fc.assert(
      fc.property(arbitraryDrawer, fc.nat(1e6), fc.boolean(), (given, seed, low) => {
        const request = low ? mediumWave(given) : requestOf(given);
        const space = spaceOf(request);
        const builder = new Builder(space);
        const draws = new Draws(chanceFrom(seed, 0));
        for (const arm of armsOf(space)) {
          const first = drawDesign(space, arm, draws);
          if (!first) continue;
          const near = MOVES.flatMap((_, move) => neighboursOf(space, arm, first, move, draws).slice(0, 3));
          for (const design of [first, ...near]) {
            const set = builder.set(design);
            expect(buildable(set, request.drawer), JSON.stringify(design)).toEqual([]);
            for (const what of featuresOf(set)) shapes.add(what);
            made++;
          }
        }
      }),
      { numRuns: 100 },
    );
    // the property is about something
    expect(made).toBeGreaterThan(400);
    expect(shapes).toEqual(new Set(FEATURES));
  });

  test('the checker sees what is wrong: each thing spoilt by itself is told', () => {
    const request = requestOf(FULL);
    const space = spaceOf(request);
    const arm = armsOf(space).find((a) => space.aerials[a.aerials[0]]!.group.startsWith('dipole of rods'))!;
    const draws = new Draws(chanceFrom(4, 0));
    let design = drawDesign(space, arm, draws)!;
    // a piezo, aerial and detector on taps
    while (
      design.joint !== 2 ||
      space.stock.earpieces[design.earpiece]!.part.kind !== 'piezo' ||
      design.tap === 0 ||
      design.wire !== 1 ||
      design.bypass === 0
    )
      design = drawDesign(space, arm, draws)!;
    const set = new Builder(space).set(design);
    expect(buildable(set, request.drawer)).toEqual([]);
    const { tank, phones } = set;
    const { coil } = tank;
    if (coil.kind !== 'geometry' || set.aerial.kind !== 'wires' || set.aerial.shape.kind !== 'dipole')
      throw new Error('wound, with a dipole');
    const wound = (change: object): SetDescription => ({ ...set, tank: { ...tank, coil: { ...coil, ...change } } });
    const { load: _, ...unloaded } = phones;
    const spoilt: readonly (readonly [string, SetDescription, RegExp])[] = [
      ['former', wound({ innerDiameter: 9e-3 }), /wind on/],
      ['wire', wound({ wireDiameter: 0.9e-3 }), /wire/],
      ['turns', wound({ turns: coil.turns + 0.2 }), /halves/],
      ['metres', wound({ turns: 400 }), /so much wire/],
      ['pitch', wound({ pitch: coil.wireDiameter / 2 }), /in each other/],
      ['tap', { ...set, tank: { ...tank, detectorCoupling: { kind: 'tap', turns: 0.3 } } }, /soldered/],
      ['tap off', { ...set, tank: { ...tank, detectorCoupling: { kind: 'tap', turns: coil.turns + 1 } } }, /off the coil/],
      ['capacitor', { ...set, tank: { ...tank, capacitor: { ...tank.capacitor, maximum: 33e-12 } } }, /tuning capacitor/],
      [
        'coupling capacitor',
        { ...set, tank: { ...tank, aerialCoupling: { kind: 'series-capacitor', capacitance: 3e-12 } } },
        /coupling capacitor/,
      ],
      ['detector', { ...set, detector: { ...set.detector, seriesResistance: 3.3 } }, /detector/],
      ['load', { ...set, phones: unloaded }, /no way/],
      ['resistor', { ...set, phones: { ...phones, load: 333e3 } }, /resistor/],
      ['bypass', { ...set, phones: { ...phones, bypass: 333e-12 } }, /bypass/],
      ['dipole', { ...set, aerial: { ...set.aerial, shape: { ...set.aerial.shape, length: 3 } } }, /aerial/],
      ['no joint', { ...set, aerial: { kind: 'coil', axis: { kind: 'vertical' } } }, /coil is the aerial/],
    ];
    const { aerial } = set;
    const put = (shape: WireShape): SetDescription => ({ ...set, aerial: { ...aerial, shape } as AerialDescription });
    const rod = { length: 0.7, diameter: 5e-3, metal: 'brass' } as const;
    const orientation = { kind: 'horizontal', broadside: 0 } as const;
    const folded = {
      kind: 'folded-dipole',
      length: 1.4,
      diameter: 5e-3,
      secondDiameter: 5e-3,
      spacing: 0.05,
      metal: 'brass',
      orientation,
    } as const;
    const shapes: typeof spoilt = [
      // two rods of 80 cm bent to a U of 75 cm: the rods would have to be 1.45 m
      ['folded', put(folded), /wire for the aerial/],
      ['other conductor', put({ ...folded, secondDiameter: 1e-3 }), /one rod or wire/],
      [
        'loop',
        put({ kind: 'square-loop', side: 1.2, diameter: 1e-3, metal: 'copper', bearing: 0, fedAt: 'bottom' }),
        /4.80 m of such wire/,
      ],
      [
        'round loop',
        put({
          kind: 'round-loop',
          diameter: 0.3,
          turns: 1,
          windingLength: 0,
          wireDiameter: 5e-3,
          metal: 'brass',
          sides: 16,
          axis: { kind: 'vertical' },
        }),
        /bend the loop/,
      ],
      [
        'beam',
        put({
          kind: 'beam',
          reflector: { length: 1.5, behind: 0.5 },
          driven: { length: 1.4, element: { kind: 'straight' } },
          directors: [],
          diameter: 5e-3,
          metal: 'brass',
          polarisation: 'horizontal',
          bearing: 0,
        }),
        /not enough rods/,
      ],
      [
        'radials',
        put({
          kind: 'rod',
          rod,
          lean: { angle: 0, bearing: 0 },
          against: { kind: 'radials', count: 6, droop: 0, length: 0.7, diameter: 1e-3, metal: 'copper' },
        }),
        /4.20 m of such wire/,
      ],
      [
        'case',
        put({
          kind: 'rod',
          rod,
          lean: { angle: 0, bearing: 0 },
          against: { kind: 'box', width: 0.1, depth: 0.1, height: 0.1, metal: 'copper' },
        }),
        /counterpoise/,
      ],
      ['choke', { ...set, phones: { ...phones, choke: { inductance: 5, resistance: 400 } } }, /choke/],
      [
        'link',
        {
          ...set,
          tank: {
            ...tank,
            aerialCoupling: {
              kind: 'link',
              turns: 1,
              gap: -1e-3,
              innerDiameter: coil.innerDiameter + 2e-4,
              wireDiameter: coil.wireDiameter,
              pitch: 2 * coil.wireDiameter,
            },
          },
        },
        /neither into the coil nor over it/,
      ],
    ];
    for (const [what, wrong, told] of [...spoilt, ...shapes]) expect(buildable(wrong, request.drawer).join('; '), what).toMatch(told);
  });
});
