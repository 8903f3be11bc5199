/** Values at which documents differ. */
export interface Difference {
  /** dotted: `tank.coil.turns` */
  readonly path: string;
  /** one for each document; undefined where it says nothing there */
  readonly values: readonly unknown[];
}

/** Where documents differ, down to single values; name and notes of the sets are no difference. */
export function differences(documents: readonly unknown[]): readonly Difference[] {
  return below(documents, '').filter(({ path }) => path !== 'name' && path !== 'notes' && path !== 'version');
}

function below(values: readonly unknown[], path: string): readonly Difference[] {
  if (values.every((v) => JSON.stringify(v) === JSON.stringify(values[0]))) return [];
  // where all that say something say it as objects, the difference is further in
  const said = values.filter((v) => v !== undefined);
  if (said.length > 0 && said.every(isObject)) {
    const keys = [...new Set(said.flatMap((v) => Object.keys(v)))];
    return keys.flatMap((key) =>
      below(
        values.map((v) => (isObject(v) && Object.hasOwn(v, key) ? v[key] : undefined)),
        path === '' ? key : `${path}.${key}`,
      ),
    );
  }
  return [{ path, values }];
}

const isObject = (o: unknown): o is Record<string, unknown> => typeof o === 'object' && o !== null && !Array.isArray(o);
