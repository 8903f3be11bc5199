import { type DimensionName, writeExact } from '#units';
import { fieldDimension } from './field-dimension.ts';
import type { SetFile } from './set-file.ts';
import { writeSetFile } from './write-set-file.ts';

/** A set written out in full, parts and other files put in, in which one number can be exchanged. */
export interface Variable {
  readonly dimension: DimensionName;
  /** the file with the number exchanged [SI], to be read anew with every check */
  with(value: number): string;
}

/**
 * A number of a set, to be varied.
 *
 * @param path - `tank.coil.turns`, `place.stations.0.distance`; null comes back where no number stands there
 */
export function variable(set: SetFile, path: string): Variable | null {
  const full = JSON.parse(writeSetFile(set)) as Record<string, unknown>;
  const keys = path.split(/[.[\]]+/).filter((k) => k !== '');
  const parent = keys.slice(0, -1).reduce<unknown>((o, k) => (isObject(o) ? o[k] : undefined), full);
  const last = keys.at(-1);
  const dimension = fieldDimension(full, path);
  if (!isObject(parent) || last === undefined || dimension === null) return null;
  return {
    dimension,
    with(value) {
      parent[last] = writeExact(value, dimension);
      return JSON.stringify(full);
    },
  };
}

/** A number of a set, as it stands. */
export interface StandingNumber {
  readonly path: string;
  readonly text: string;
  readonly dimension: DimensionName;
}

/** All numbers of a set that can be varied, in the order in which they are written. */
export function variables(set: SetFile): readonly StandingNumber[] {
  const full = JSON.parse(writeSetFile(set)) as unknown;
  return quantities(full, full, '');
}

const isObject = (o: unknown): o is Record<string, unknown> => typeof o === 'object' && o !== null;

function quantities(o: unknown, file: unknown, path: string): StandingNumber[] {
  if (isObject(o)) return Object.entries(o).flatMap(([k, v]) => quantities(v, file, path === '' ? k : `${path}.${k}`));
  const dimension = fieldDimension(file, path);
  return dimension === null ? [] : [{ path, text: String(o ?? ''), dimension }];
}
