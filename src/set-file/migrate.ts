import type { Positions } from './json/positions.ts';
import type { JsonObject } from './json/scan.ts';

/** One step from a version of the file to the next. It may change the object it is given; parts it moves keep their places in the file. */
export interface Migration {
  readonly from: number;
  readonly apply: (document: JsonObject) => JsonObject;
}

/** The version that is read and written, and the steps that lead to it from older ones. */
export interface MigrationChain {
  readonly current: number;
  readonly migrations: readonly Migration[];
}

/** Version 1 is the first; a later version adds its step here. */
export const CHAIN: MigrationChain = { current: 1, migrations: [] };

/** Brings a document up to the current version, or says why its version cannot be read. */
export function migrate(
  document: JsonObject,
  chain: MigrationChain,
  positions: Positions,
): { readonly document: JsonObject } | { readonly given: unknown; readonly why: string; readonly mend: string } {
  const { version } = document;
  const write = `Write "version": ${chain.current} as the first key.`;
  if (version === undefined) return { given: version, why: 'the file does not say its version', mend: write };
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1)
    return { given: version, why: 'a version is a whole number from 1 on', mend: write };
  if (version > chain.current)
    return {
      given: version,
      why: `the newest version known here is ${chain.current}`,
      mend: 'Use a newer release of this program for the file.',
    };
  let now = document;
  for (let v = version; v < chain.current; v++) {
    const step = chain.migrations.find((m) => m.from === v);
    if (!step) return { given: version, why: `no way is known from version ${v} to ${v + 1}`, mend: write };
    const next = step.apply(now);
    next.version = v + 1;
    if (positions.of(next) === null) positions.inherit(next, now);
    now = next;
  }
  return { document: now };
}
