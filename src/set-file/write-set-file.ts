import { encode } from 'zod/mini';
import { aerialToForm } from './assemble/aerial.ts';
import { placeToForm } from './assemble/place.ts';
import { type SetForm, setForm } from './forms/set-form.ts';
import { CHAIN } from './migrate.ts';
import type { SetFile } from './set-file.ts';

/**
 * Writes a set file: every value with its unit, so that reading gives back exactly what was written.
 *
 * Parts and other files that it was once read from are written out in full.
 *
 * @throws Error if the value holds what no set file can, such as a number that is none
 */
export function writeSetFile(value: SetFile): string {
  const { place, aerial, ...rest } = value;
  const form = { ...rest, aerial: aerialToForm(aerial), ...(place && { place: placeToForm(place) }) } as SetForm;
  return `${JSON.stringify({ version: CHAIN.current, ...encode(setForm, form) }, null, 2)}\n`;
}
