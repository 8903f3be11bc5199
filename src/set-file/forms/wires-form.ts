import * as z from 'zod/mini';
import { axis, bearing, earthResistance, METALS, orientation, rodLength, wire, withFeeder } from './aerial-keys.ts';
import { GROUND_NAMES } from './place-form.ts';
import { about, quantity, withDefault } from './quantity.ts';

/** Aerials that are computed from their wires, in a maker's words. */

const metal = about(z.enum([...METALS, 'lossless']), 'what it is made of; lossless for comparison with theory');
const spacing = quantity('length', { above: 0, max: 10 }, 'of the two conductors of a folded one, axis to axis');
const constants = z.strictObject({
  permittivity: quantity('ratio', { min: 1, max: 100 }, 'relative permittivity'),
  conductivity: quantity('conductivity', { min: 0, max: 1e8 }, 'conductivity'),
});

/** Keys of every shape. */
const common = {
  ground: z.optional(
    about(
      z.union([z.enum(['none', 'perfect', ...GROUND_NAMES]), constants]),
      'ground below: none, perfect (a metal plane, in the impedance too), or real (its name or constants; in the pattern alone); none if not given, perfect below a wire to earth. The field of a station has the ground in it already',
      'none',
    ),
  ),
  segments: z.optional(
    quantity('ratio', { min: 1, max: 1000, whole: true }, 'forces the number of segments; chosen by a convergence test if not given'),
  ),
  ...withFeeder,
};
const raised = {
  height: z.optional(
    quantity(
      'length',
      { min: 0, max: 1000 },
      'of the feed above the ground; if not given that of the site, 1.5 m in a file without a place',
    ),
  ),
  ...common,
};
const kind = z.literal('wires');

/** A wire beside the rod: thin copper if nothing is said. */
const thin = {
  diameter: withDefault(wire('of the wire'), '1 mm'),
  metal: withDefault(metal, 'copper'),
};
const caseSide = (what: string) => quantity('length', { min: 1e-3, max: 10 }, what);
const against = about(
  z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('drop-wire'), length: rodLength('hanging straight down from the set'), ...thin }),
    z.strictObject({
      kind: z.literal('box'),
      width: caseSide("of the set's metal: case, ground plane, batteries of capacitors"),
      depth: caseSide('front to back'),
      height: caseSide('top to bottom'),
      metal: withDefault(metal, 'copper'),
    }),
    z.strictObject({
      kind: z.literal('radials'),
      count: quantity('ratio', { min: 1, max: 64, whole: true }, 'how many, spread evenly'),
      length: rodLength('of each'),
      droop: withDefault(quantity('angle', { min: -Math.PI / 2, max: Math.PI / 2 }, 'below the level'), '0 deg'),
      ...thin,
    }),
    z.strictObject({
      kind: z.literal('earth-wire'),
      length: rodLength('down to the earth rod; sloping north where it is longer than the set is high'),
      earthResistance: withDefault(earthResistance, '100 ohm'),
      ...thin,
    }),
  ]),
  'what the rod works against: a drop-wire, the set as a metal box, radials, or an earth-wire',
  { kind: 'drop-wire', length: '75 cm' },
);

const rod = z.strictObject({
  kind,
  shape: z.literal('rod'),
  length: rodLength('of the rod'),
  diameter: withDefault(wire('of the rod, the mean of a telescopic one'), '5 mm'),
  metal: withDefault(metal, 'brass'),
  lean: withDefault(
    about(
      z.strictObject({
        angle: withDefault(quantity('angle', { min: -Math.PI, max: Math.PI }, 'away from upright; 90° lies level'), '0 deg'),
        bearing: withDefault(bearing('where its tip leans to'), 'N'),
      }),
      'upright, or leaning',
    ),
    {},
  ),
  against: withDefault(against, { kind: 'box', width: '15 cm', depth: '5 cm', height: '10 cm' }),
  ...raised,
});

const dipole = z.strictObject({
  kind,
  shape: z.literal('dipole'),
  length: rodLength('both halves together'),
  diameter: withDefault(wire('of the conductor'), '6 mm'),
  metal: withDefault(metal, 'copper'),
  orientation,
  includedAngle: withDefault(quantity('angle', { above: 0, max: Math.PI }, 'between the halves; 180° for a straight one'), '180 deg'),
  bend: withDefault(
    about(
      z.enum(['down', 'forward']),
      'where the tips of a bent one go: down (an inverted V), or forward to its broadside; an upright one bends to the north',
    ),
    'down',
  ),
  slope: withDefault(
    quantity('angle', { min: -Math.PI / 2, max: Math.PI / 2 }, 'of a level one: its tip to the right of the broadside is raised so far'),
    '0 deg',
  ),
  ...raised,
});

const foldedDipole = z.strictObject({
  kind,
  shape: z.literal('folded-dipole'),
  length: rodLength('end to end'),
  diameter: withDefault(wire('of the conductor that is fed'), '6 mm'),
  secondDiameter: z.optional(wire('of the other conductor; as the first if not given')),
  spacing: withDefault(spacing, '5 cm'),
  metal: withDefault(metal, 'copper'),
  orientation,
  ...raised,
});

const element = z.strictObject({
  length: rodLength('end to end'),
  position: quantity('length', { min: -1000, max: 1000 }, 'along the boom, from any point of it, rising to the front'),
});
const beam = z.strictObject({
  kind,
  shape: z.literal('beam'),
  elements: about(z.array(element).check(z.minLength(1)), 'from the back to the front: reflector, driven element, directors', [
    { length: '1.53 m', position: '0 m' },
    { length: '1.43 m', position: '0.5 m' },
    { length: '1.36 m', position: '1.2 m' },
  ]),
  driven: withDefault(
    quantity('ratio', { min: 1, max: 2, whole: true }, 'which of the elements is fed, counted from 1; 1 for a beam without reflector'),
    2,
  ),
  drivenElement: withDefault(
    about(
      z.union([z.literal('straight'), z.strictObject({ kind: z.literal('folded'), spacing: withDefault(spacing, '5 cm') })]),
      'straight, cut in the middle; or folded',
      'straight',
      { kind: 'folded', spacing: '5 cm' },
    ),
    'straight',
  ),
  diameter: withDefault(wire('of all elements'), '8 mm'),
  metal: withDefault(metal, 'aluminium'),
  polarisation: withDefault(about(z.enum(['horizontal', 'vertical']), 'elements level or upright'), 'horizontal'),
  bearing: bearing('where the boom points'),
  ...raised,
});

const roundLoop = z.strictObject({
  kind,
  shape: z.literal('round-loop'),
  diameter: quantity('length', { min: 1e-3, max: 100 }, 'across the loop'),
  turns: withDefault(quantity('ratio', { min: 1, max: 20, whole: true }, 'whole turns'), 1),
  windingLength: z.optional(
    quantity(
      'length',
      { min: 0, max: 100 },
      'along the axis, from the middle of the wire at one end to that at the other; if not given, turns lie one wire apart',
    ),
  ),
  wireDiameter: withDefault(wire('of the wire'), '1 mm'),
  metal: withDefault(metal, 'copper'),
  sides: withDefault(quantity('ratio', { min: 3, max: 96, whole: true }, 'straight pieces that stand for a turn'), 16),
  axis,
  ...raised,
});

const squareLoop = z.strictObject({
  kind,
  shape: z.literal('square-loop'),
  side: rodLength('of each side; a wavelength round is the rule'),
  diameter: withDefault(wire('of the wire'), '2 mm'),
  metal: withDefault(metal, 'copper'),
  bearing: bearing('at right angles to the plane of the loop, which stands upright'),
  fedAt: withDefault(
    about(z.enum(['bottom', 'side']), 'bottom hears level fields; side, the left one as seen from behind, upright ones'),
    'bottom',
  ),
  ...raised,
});

const coordinate = (what: string) => quantity('length', { min: -1000, max: 1000 }, what);
const point = about(
  z.tuple([coordinate('to the east'), coordinate('to the north'), coordinate('above the ground')]),
  'a point: so far east, north, and up',
  ['0 m', '0.7 m', '3 m'],
);
const onWire = about(
  z.union([
    z.strictObject({
      wire: quantity('ratio', { min: 0, max: 10_000, whole: true }, 'number of the wire in the list, counted from 0'),
      at: withDefault(quantity('ratio', { min: 0, max: 1 }, 'how far along it: 0 at its beginning, 1 at its end'), 0.5),
    }),
    z.strictObject({ point }),
  ]),
  'a place on a wire',
  { wire: 0, at: 0.5 },
);
const parts = {
  place: onWire,
  resistance: z.optional(quantity('resistance', { min: 0, max: 1e12 }, 'no resistor if not given')),
  inductance: z.optional(quantity('inductance', { min: 0, max: 1e3 }, 'no coil if not given')),
  capacitance: z.optional(quantity('capacitance', { min: 0, max: 1 }, 'no capacitor if not given')),
};
const load = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('impedance'),
    place: onWire,
    resistance: withDefault(quantity('resistance', { min: 0, max: 1e12 }, 'at every frequency'), 0),
    reactance: withDefault(quantity('resistance', { min: -1e12, max: 1e12 }, 'at every frequency, inductive positive'), 0),
  }),
  z.strictObject({ kind: z.literal('series'), ...parts }),
  z.strictObject({ kind: z.literal('parallel'), ...parts }),
]);
const freeList = z.strictObject({
  kind,
  shape: z.literal('free-list'),
  wires: about(
    z
      .array(
        z.strictObject({
          from: point,
          to: point,
          diameter: withDefault(wire('of the wire'), '2 mm'),
          metal: withDefault(metal, 'copper'),
        }),
      )
      .check(z.minLength(1)),
    'straight wires; ends that meet are joined',
  ),
  feed: about(onWire, 'where the set, or the feeder, is connected: in the wire, or at its end to all that meets there', {
    wire: 0,
    at: 0.5,
  }),
  loads: withDefault(about(z.array(load), 'parts put into the wires: coils, capacitors, resistors, traps'), []),
  ...common,
});

export const wiresForm = z.discriminatedUnion('shape', [rod, dipole, foldedDipole, beam, roundLoop, squareLoop, freeList]);

export type WiresForm = z.core.output<typeof wiresForm>;
