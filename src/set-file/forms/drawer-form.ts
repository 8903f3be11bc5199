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
    wires: shelf('wires by name'),
    rods: withDefault(
      about(
        z.array(
          z.strictObject({
            title,
            length: quantity('length', { above: 0, max: 1000 }, 'length'),
            diameter: quantity('diameter', { above: 0, max: 1 }, 'thickness'),
            metal: withDefault(metal, 'brass'),
          }),
        ),
        'rods and tubes for aerials',
      ),
      [],
    ),
    formers: withDefault(
      about(
        z.array(z.strictObject({ title, diameter: quantity('length', { above: 0, max: 10 }, 'outer diameter, or of the drill bit') })),
        'formers and drill bits to wind on',
      ),
      [],
    ),
  }),
  "a person's own parts; a name that the library has too takes its place",
);

export type DrawerForm = z.core.output<typeof drawerForm>;
