import * as z from 'zod/mini';
import { metal } from './aerial-keys.ts';
import { about, quantity, withDefault } from './quantity.ts';

export const SURFACES = { bright: 1, tarnished: 1.3 } as const;
export const JOINTS = { bright: 0.5e-3, dull: 10e-3, screwed: 10e-3 } as const;

const turns = (what: string) => quantity('turns', { above: 0, max: 1000 }, what);
const wireDiameter = quantity('diameter', { min: 10e-6, max: 0.1 }, 'bare wire');
const pitch = quantity('length', { min: 10e-6, max: 10 }, 'centre to centre of neighbouring turns; this or length');
const windingLength = quantity('length', { above: 0, max: 100 }, 'of the winding, that is turns times pitch; in place of pitch');
const innerDiameter = quantity('length', { min: 0.1e-3, max: 100 }, 'inside the winding: the former or drill bit');

export const surfaceFactor = about(
  z.union([z.enum(['bright', 'tarnished']), quantity('ratio', { min: 1, max: 100 }, 'RF resistance over that of smooth bright metal')]),
  'surface of the wire: bright (1), tarnished (1.3, an estimate), or the factor by which its RF resistance is raised',
);

export const wirePart = z.strictObject({ part: about(z.string(), 'name of a wire in the library or the drawer') });

const geometry = z.strictObject({
  kind: z.literal('geometry'),
  turns: quantity('turns', { min: 1, max: 1000 }, 'turns, with halves and quarters'),
  innerDiameter,
  wire: z.optional(about(wirePart, 'a wire by name: gives wireDiameter, metal and surfaceFactor where these are not given')),
  wireDiameter: z.optional(wireDiameter),
  pitch: z.optional(pitch),
  length: z.optional(windingLength),
  metal: withDefault(metal, 'copper'),
  surfaceFactor: withDefault(surfaceFactor, 'bright'),
  leadLength: withDefault(quantity('length', { min: 0, max: 10 }, 'straight wire at each end, up to the capacitor'), '10 mm'),
  former: z.optional(
    about(
      z.strictObject({
        permittivity: quantity('ratio', { min: 1, max: 99 }, 'relative permittivity'),
        lossTangent: withDefault(quantity('ratio', { min: 0, max: 10 }, 'loss tangent'), 0.01),
      }),
      'a former that stays in',
    ),
  ),
});

const electrical = z.strictObject({
  kind: z.literal('electrical'),
  inductance: quantity('inductance', { above: 0, max: 1 }, 'inductance'),
  q: quantity('ratio', { above: 0, max: 1e5 }, 'unloaded Q at frequency; resistance grows with the square root of frequency'),
  frequency: quantity('frequency', { above: 0, max: 1e11 }, 'where Q was measured'),
  selfCapacitance: withDefault(quantity('capacitance', { min: 0, max: 1e-9 }, 'self-capacitance'), '0.5 pF'),
  turns: withDefault(turns('turns, so that taps have a meaning; 1: taps are shares of the coil'), 1),
  tapCoupling: withDefault(
    quantity(
      'ratio',
      { above: 0, max: 0.999_999 },
      'coupling coefficient of the parts on either side of a tap: 0.5 for a long coil, 0.9 for a short one',
    ),
    0.6,
  ),
});

export const LAWS = ['capacitance-linear', 'wavelength-linear', 'frequency-linear', 'logarithmic'] as const;
const law = about(
  z.union([
    z.enum(LAWS),
    z.discriminatedUnion('kind', [
      z.strictObject({ kind: z.enum(LAWS) }),
      z.strictObject({
        kind: z.literal('table'),
        angle: z.array(quantity('angle', { min: 0, max: 100 }, 'angles, ascending')),
        capacitance: z.array(quantity('capacitance', { above: 0, max: 1e-6 }, 'capacitances measured there')),
      }),
    ]),
  ]),
  'capacitance against angle',
);

export const capacitorForm = about(
  z.strictObject({
    minimum: quantity('capacitance', { above: 0, max: 1e-6 }, 'smallest capacitance'),
    maximum: quantity('capacitance', { above: 0, max: 1e-6 }, 'largest capacitance'),
    rotation: withDefault(quantity('angle', { above: 0, max: 100 }, 'angle from smallest to largest'), '180°'),
    law: withDefault(law, 'capacitance-linear'),
    lossTangent: withDefault(quantity('ratio', { min: 0, max: 1 }, 'of the dielectric; air nearly 0, polymer film about 0.002'), 0.0001),
    contactResistance: withDefault(
      quantity('resistance', { min: 0, max: 100 }, 'of plates, wiper and contact in series (the default is an estimate)'),
      '20 mohm',
    ),
    leadInductance: withDefault(
      quantity('inductance', { min: 0, max: 1e-6 }, 'of its own leads and frame (the default is an estimate)'),
      '5 nH',
    ),
    series: z.optional(quantity('capacitance', { above: 0, max: 1e-6 }, 'fixed capacitor in series, to narrow the range')),
    parallel: z.optional(quantity('capacitance', { min: 0, max: 1e-6 }, 'fixed capacitor in parallel')),
  }),
  'the variable capacitor',
);

const coupling = (what: string) =>
  about(
    z.union([
      z.literal('direct'),
      z.discriminatedUnion('kind', [
        z.strictObject({ kind: z.literal('direct') }),
        z.strictObject({ kind: z.literal('tap'), turns: turns('from the earthed end') }),
        z.strictObject({
          kind: z.literal('link'),
          turns: quantity('turns', { min: 1, max: 1000 }, 'turns of the link'),
          innerDiameter,
          wireDiameter,
          pitch: z.optional(about(pitch, 'centre to centre of neighbouring turns; if neither this nor length is given, they touch')),
          length: z.optional(windingLength),
          gap: withDefault(
            quantity(
              'length',
              { min: -100, max: 100 },
              'from the end of the link to the earthed end of the coil; negative if it is pushed in',
            ),
            0,
          ),
        }),
        z.strictObject({
          kind: z.literal('series-capacitor'),
          capacitance: quantity('capacitance', { above: 0, max: 1e-6 }, 'of that capacitor'),
        }),
      ]),
    ]),
    what,
    'direct',
    { kind: 'tap', turns: '1 1/2' },
  );

const joints = z.strictObject({
  count: withDefault(quantity('ratio', { min: 0, max: 1000, whole: true }, 'joints in the circulating path'), 4),
  resistance: withDefault(
    about(
      z.union([z.enum(['bright', 'dull', 'screwed']), quantity('resistance', { min: 0, max: 1000 }, 'of each joint')]),
      'of each joint: bright (0.5 milliohm), dull or screwed (10 milliohm), both estimates, or its resistance',
    ),
    'bright',
  ),
});

export const tankForm = about(
  z.strictObject({
    coil: about(z.discriminatedUnion('kind', [geometry, electrical]), 'the coil: by its geometry, or by its electrical values'),
    capacitor: capacitorForm,
    wiring: withDefault(
      about(
        z.strictObject({
          length: withDefault(quantity('length', { min: 0, max: 10 }, 'both ways together'), '20 mm'),
          diameter: withDefault(quantity('diameter', { min: 10e-6, max: 0.1 }, 'of the wire'), '1 mm'),
        }),
        'wire between coil and capacitor',
      ),
      {},
    ),
    joints: withDefault(about(joints, 'soldered and screwed joints'), {}),
    strayCapacitance: withDefault(
      quantity('capacitance', { min: 0, max: 1e-9 }, 'everything else across the tank: wiring, hand, holders'),
      '1 pF',
    ),
    aerialCoupling: z.optional(coupling('how the aerial joins the coil; left out where the coil is the aerial')),
    detectorCoupling: withDefault(coupling('where the detector hangs'), 'direct'),
    detectorReturn: z.optional(
      quantity(
        'resistance',
        { above: 0, max: 1e12 },
        "resistance that returns the detector's direct current; needed with a series capacitor",
      ),
    ),
  }),
  'the tuned circuit',
);

export type TankForm = z.core.output<typeof tankForm>;
