import * as z from 'zod/mini';
import { metal } from './aerial-keys.ts';
import { about, quantity, withDefault } from './quantity.ts';
import { surfaceFactor } from './tank-form.ts';

const partName = z.string().check(z.minLength(1), z.maxLength(200));
/** A number or text as in the section; the section's own schema reads it when the part is used. */
const values = z.record(z.string(), z.unknown());
const part = z.strictObject({
  title: z.optional(about(z.string().check(z.maxLength(500)), 'what it is, for people')),
  values: about(values, 'the same keys and values as the section of the set file it goes into'),
  band: z.optional(
    about(
      z.record(z.string(), z.tuple([z.union([z.string(), z.number()]), z.union([z.string(), z.number()])])),
      'likely range of a value: low and high',
    ),
  ),
  source: z.optional(about(z.string().check(z.maxLength(2000)), 'where the values are from')),
  estimate: z.optional(about(z.boolean(), 'whether they are an estimate')),
});
const shelf = (what: string) => withDefault(about(z.record(partName, part), what), {});

/** A wire with what of it matters to winding: how much there is, and where it takes solder. */
const wirePart = z.extend(part, {
  length: z.optional(quantity('length', { above: 0, max: 1e5 }, 'how much of it there is; as much as is needed where not given')),
  tapEvery: withDefault(
    quantity(
      'turns',
      { min: 0.25, max: 100 },
      'turns from one place where a tap can be soldered to the next: a quarter on bare wire, one where a loop is drawn out',
    ),
    '1/4',
  ),
});

/** What a wire of the library gives to a coil. */
export const wireForm = z.strictObject({
  wireDiameter: quantity('diameter', { min: 10e-6, max: 0.1 }, 'bare wire'),
  metal: withDefault(metal, 'copper'),
  surfaceFactor: withDefault(surfaceFactor, 'bright'),
});

const title = z.optional(z.string().check(z.maxLength(500)));
export const drawerForm = about(
  z.strictObject({
    detectors: shelf('detectors by name'),
    earpieces: shelf('earpieces by name'),
    transformers: shelf('transformers by name'),
    capacitors: shelf('variable capacitors by name'),
    wires: withDefault(about(z.record(partName, wirePart), 'wires by name'), {}),
    fromLibrary: withDefault(about(z.array(partName), 'names of parts of the library that lie in the drawer too'), []),
    rods: withDefault(
      about(
        z.array(
          z.strictObject({
            title,
            length: quantity('length', { above: 0, max: 1000 }, 'length'),
            diameter: quantity('diameter', { above: 0, max: 1 }, 'thickness'),
            metal: withDefault(metal, 'brass'),
            count: withDefault(quantity('ratio', { min: 1, max: 1000, whole: true }, 'how many of them'), 1),
          }),
        ),
        'rods and tubes for aerials, which can be cut or pushed in to any shorter length',
      ),
      [],
    ),
    formers: withDefault(
      about(
        z.array(
          z.strictObject({
            title,
            diameter: quantity('length', { above: 0, max: 10 }, 'outer diameter, or of the drill bit'),
            length: z.optional(quantity('length', { above: 0, max: 10 }, 'that can be wound on; as much as is needed where not given')),
            stays: z.optional(
              about(
                z.strictObject({
                  permittivity: quantity('ratio', { min: 1, max: 99 }, 'relative permittivity'),
                  lossTangent: withDefault(quantity('ratio', { min: 0, max: 10 }, 'loss tangent'), 0.01),
                }),
                'what it is made of, where it stays in the coil; a coil that comes off must hold itself',
              ),
            ),
          }),
        ),
        'formers and drill bits to wind on',
      ),
      [],
    ),
    resistors: withDefault(about(z.array(quantity('resistance', { above: 0, max: 1e12 }, 'of a resistor')), 'resistors'), []),
    chokes: withDefault(
      about(
        z.array(
          z.strictObject({
            title,
            inductance: quantity('inductance', { above: 0, max: 1e4 }, 'at audio'),
            resistance: quantity('resistance', { above: 0, max: 1e9 }, 'of its winding'),
          }),
        ),
        'chokes for the direct current of the detector, in place of a resistor',
      ),
      [],
    ),
    fixedCapacitors: withDefault(
      about(z.array(quantity('capacitance', { above: 0, max: 1e-3 }, 'of a fixed capacitor')), 'small fixed capacitors'),
      [],
    ),
    garden: z.optional(
      about(
        z.strictObject({
          length: quantity('length', { above: 0, max: 1000 }, 'room for a level wire'),
          height: quantity('length', { above: 0, max: 100 }, 'how high it can hang'),
          earthResistance: withDefault(
            quantity('resistance', { min: 0, max: 1e5 }, 'of the earth rod there (the default is an estimate)'),
            '50 ohm',
          ),
        }),
        'where a long wire can hang, with an earth of its own; never the earth of the mains',
      ),
    ),
  }),
  "a person's own parts; a name that the library has too takes its place",
);

export type DrawerForm = z.core.output<typeof drawerForm>;
