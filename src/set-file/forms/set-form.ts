import * as z from 'zod/mini';
import { aerialForm } from './aerial-form.ts';
import { detectorForm } from './detector-form.ts';
import { drawerForm } from './drawer-form.ts';
import { earForm, programmeForm } from './listener-form.ts';
import { phonesForm } from './phones-form.ts';
import { placeForm } from './place-form.ts';
import { about, withDefault } from './quantity.ts';
import { tankForm } from './tank-form.ts';

/** Keys that every file may have, in the order in which they are written. */
export const fileName = withDefault(about(z.string().check(z.maxLength(200)), 'name of the set or place'), '');
export const fileNotes = withDefault(
  about(z.string().check(z.maxLength(20_000)), 'anything for the reader; there are no comments in JSON'),
  '',
);

/** A whole set file once other files and named parts have been put in. */
export const setForm = z.strictObject({
  name: fileName,
  notes: fileNotes,
  place: z.optional(placeForm),
  aerial: aerialForm,
  tank: tankForm,
  detector: detectorForm,
  phones: phonesForm,
  ear: withDefault(earForm, {}),
  programme: withDefault(programmeForm, {}),
  drawer: withDefault(drawerForm, {}),
});

/** What a search through the drawer reads of a file. */
export const drawerFileForm = z.strictObject({
  name: fileName,
  place: placeForm,
  ear: withDefault(earForm, {}),
  programme: withDefault(programmeForm, {}),
  drawer: withDefault(drawerForm, {}),
});

export type SetForm = z.core.output<typeof setForm>;
