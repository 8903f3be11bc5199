import type { DimensionName } from '#units';
import { setForm } from './forms/set-form.ts';
import { dimensionWithin, schemaAt } from './forms/walk.ts';
import { readPath } from './problem.ts';

/**
 * What kind of quantity stands at a path of a set file, so that a value for it can be read; null if no quantity stands there.
 *
 * @param file - the file as JSON, with parts and other files not put in: it says which of several forms are meant
 * @param path - `tank.coil.turns`, `place.stations[0].distance`
 */
export function fieldDimension(file: unknown, path: string): DimensionName | null {
  const found = schemaAt(setForm, file, readPath(path));
  return found && dimensionWithin(found);
}
