import { readSetFile, variable as variableOf, variables } from '#set-file';
import { type DimensionName, nearestWord, readQuantity, writeExact } from '#units';
import { BadFile } from './bad-file.ts';
import { type Loaded, load, refused } from './load.ts';

/** One number of a set file, to be exchanged. */
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
  const found = variableOf(set, path);
  if (!found) {
    const fields = variables(set).map((v) => v.path);
    const near = nearestWord(path, fields);
    throw new BadFile(
      `${path}: no number stands there in ${file}${near ? `\n  Did you mean "${near}"?` : ''}\n  There are:\n  ${fields.join('\n  ')}`,
    );
  }
  const { dimension } = found;
  return {
    dimension,
    value(text) {
      const reading = readQuantity(/^[-+]?[\d.]+(e[-+]?\d+)?$/i.test(text) && dimension === 'turns' ? Number(text) : text, dimension);
      if (!reading.ok) throw new BadFile(`${path} from or to ${text}\n  ${reading.why}\n  ${reading.mend}`);
      return reading.value;
    },
    with(value) {
      const result = readSetFile(found.with(value));
      if (!result.ok) throw refused(`${file} with ${path} = ${writeExact(value, dimension)}`, result.problems);
      return { ...result.value, file, parts, source: result.source };
    },
  };
}
