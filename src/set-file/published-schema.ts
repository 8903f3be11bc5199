import * as z from 'zod/mini';
import { aerialForm } from './forms/aerial-form.ts';
import { detectorForm } from './forms/detector-form.ts';
import { drawerForm } from './forms/drawer-form.ts';
import { earForm, programmeForm } from './forms/listener-form.ts';
import { earpieceForm, phonesWith, transformerForm } from './forms/phones-form.ts';
import { placeForm } from './forms/place-form.ts';
import { about } from './forms/quantity.ts';
import { fileName, fileNotes } from './forms/set-form.ts';
import { capacitorForm, tankForm } from './forms/tank-form.ts';
import { bare, definition } from './forms/walk.ts';
import { CHAIN } from './migrate.ts';

const file = z.strictObject({ file: about(z.string().check(z.minLength(1)), 'another set file, beside this one', 'town.json') });
const part = about(
  z.string().check(z.minLength(1)),
  'name of a part in the drawer or the library; the other keys take the place of its values',
);

/** The form itself, or a named part with any of its keys: the part has the others. */
function orPart(form: z.core.$ZodType): z.ZodMiniType {
  const variants = definition(form).options ?? [form];
  const named = variants.map((variant) => {
    const shape = Object.entries(definition(variant).shape ?? {});
    return z.strictObject({ part, ...Object.fromEntries(shape.map(([key, schema]) => [key, z.optional(bare(schema))])) });
  });
  return z.union([form, ...named]);
}

/** What a file may hold before other files and parts are put in. */
function publishedForm(): z.ZodMiniType {
  const detector = orPart(detectorForm);
  const earpiece = orPart(earpieceForm);
  const transformer = orPart(transformerForm);
  const tank = z.strictObject({ ...definition(tankForm).shape, capacitor: orPart(capacitorForm) });
  return z.strictObject({
    version: about(z.literal(CHAIN.current), 'version of the file'),
    name: fileName,
    notes: fileNotes,
    set: z.optional(
      about(file, 'another file that gives aerial, tank, detector and phones; a section given here takes the place of that one'),
    ),
    place: z.optional(z.union([placeForm, file])),
    aerial: z.optional(aerialForm),
    tank: z.optional(about(tank, 'the tuned circuit')),
    detector: z.optional(detector),
    phones: z.optional(phonesWith(transformer, earpiece)),
    ear: z.optional(earForm),
    programme: z.optional(programmeForm),
    drawer: z.optional(z.union([drawerForm, file])),
  });
}

/**
 * The JSON Schema of set files, draft 2020-12: what an editor needs to help with writing one.
 *
 * A file may hold a place alone, or a drawer, so no section is required; that a set is whole, and what its values mean together, is
 * found when it is read.
 */
export function setFileJsonSchema(): Record<string, unknown> {
  const schema = z.toJSONSchema(publishedForm(), { target: 'draft-2020-12', io: 'input' }) as Record<string, unknown>;
  return { ...schema, title: 'Earshot set file' };
}
