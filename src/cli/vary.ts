import { fieldDimension, readSetFile, writeSetFile } from '#set-file';
import { type DimensionName, nearestWord, readQuantity, writeExact } from '#units';
import { BadFile } from './bad-file.ts';
import { type Loaded, load, refused } from './load.ts';

/** A set file with all references and parts put in, in which one number can be exchanged. */
export interface Variable {
  readonly dimension: DimensionName;
  /** reads an end of the range, in SI */
  value(text: string): number;
  /** the set with the number exchanged, read anew with every check */
  with(value: number): Loaded;
}

/** @param path - `tank.coil.turns`, `place.stations.0.distance` */
export function variable(file: string, path: string): Variable {
  const { file: _, parts, source: __, ...set } = load(file);
  const full = JSON.parse(writeSetFile(set)) as Record<string, unknown>;
  const keys = path.split(/[.[\]]+/).filter((k) => k !== '');
  const parent = keys.slice(0, -1).reduce<unknown>((o, k) => (isObject(o) ? o[k] : undefined), full);
  const last = keys.at(-1);
  const dimension = fieldDimension(full, path);
  if (!isObject(parent) || last === undefined || dimension === null) {
    const fields = quantities(full, full);
    const near = nearestWord(path, fields);
    throw new BadFile(
      `${path}: no number stands there in ${file}${near ? `\n  Did you mean "${near}"?` : ''}\n  There are:\n  ${fields.join('\n  ')}`,
    );
  }
  return {
    dimension,
    value(text) {
      const reading = readQuantity(/^[-+]?[\d.]+(e[-+]?\d+)?$/i.test(text) && dimension === 'turns' ? Number(text) : text, dimension);
      if (!reading.ok) throw new BadFile(`${path} from or to ${text}\n  ${reading.why}\n  ${reading.mend}`);
      return reading.value;
    },
    with(value) {
      parent[last] = writeExact(value, dimension);
      const result = readSetFile(JSON.stringify(full));
      if (!result.ok) throw refused(`${file} with ${path} = ${writeExact(value, dimension)}`, result.problems);
      return { ...result.value, file, parts, source: result.source };
    },
  };
}

const isObject = (o: unknown): o is Record<string, unknown> => typeof o === 'object' && o !== null;

/** Paths of all quantities of a written file. */
function quantities(o: unknown, file: unknown, path = ''): string[] {
  if (isObject(o)) return Object.entries(o).flatMap(([k, v]) => quantities(v, file, path === '' ? k : `${path}.${k}`));
  return fieldDimension(file, path) === null ? [] : [path];
}
