/** What is kept of a person's work: the document, and earlier states of it. */
export interface KeptRecord {
  /** of this record, not of the document: a newer app may keep something else */
  readonly form: 1;
  /** rises by one with each save, whichever tab it is from */
  readonly revision: number;
  readonly document: unknown;
  /** other files it refers to, by name */
  readonly files: Readonly<Record<string, string>>;
  /** when it was saved [ms since 1970] */
  readonly at: number;
  /** newest first */
  readonly versions: readonly KeptVersion[];
}

export interface KeptVersion {
  readonly at: number;
  readonly document: unknown;
  readonly files: Readonly<Record<string, string>>;
}

/** Earlier states that are kept, and how far apart in time they are at least [ms]. */
export const MOST_VERSIONS = 40;
export const APART = 5 * 60_000;

/** Null for what this app did not write. */
export function readRecord(raw: unknown): KeptRecord | null {
  if (typeof raw !== 'object' || raw === null) return null;
  const r = raw as Partial<Record<keyof KeptRecord, unknown>>;
  const sound =
    r.form === 1 && Number.isSafeInteger(r.revision) && typeof r.at === 'number' && Array.isArray(r.versions) && isTexts(r.files);
  return sound ? (raw as KeptRecord) : null;
}

const isTexts = (files: unknown): boolean =>
  typeof files === 'object' && files !== null && Object.values(files).every((text) => typeof text === 'string');

/** The versions of a record with what it holds now put before them, where that is worth it: it is another document, and the last is old enough. */
export function withVersion(record: KeptRecord, next: unknown, always = false): readonly KeptVersion[] {
  const { at, document, files, versions } = record;
  if (JSON.stringify(document) === JSON.stringify(next)) return versions;
  const last = versions[0];
  if (!always && last && at - last.at < APART) return versions;
  return [{ at, document, files }, ...versions].slice(0, MOST_VERSIONS);
}
