import { readFileSync } from 'node:fs';

export type ReferenceFile = 'antennas' | 'coils' | 'detect-hear';

/** One record of reference/*.json: the outside truth, with its source beside it. */
export interface Entry {
  readonly id: string;
  readonly quantity: string;
  // the records are of many shapes; each claim knows the shape of its own
  // biome-ignore lint/suspicious/noExplicitAny: the reference files are data from outside with no common shape
  readonly inputs: any;
  // biome-ignore lint/suspicious/noExplicitAny: as above
  readonly expected: any;
  // biome-ignore lint/suspicious/noExplicitAny: as above
  readonly tolerance: any;
  readonly source: string;
  readonly obtained: string;
  readonly note?: string;
}

/** One number of ours beside one number from outside. */
export interface Comparison {
  readonly what: string;
  readonly got: number;
  readonly expected: number;
  /** the greater of the two allowances holds where both stand */
  readonly tolerance: { readonly abs?: number; readonly rel?: number };
}

/** A family of reference records that one piece of the engine must reproduce. */
export interface Claim {
  /** the row it fills in the accuracy table: `mutual inductance, coaxial rings` */
  readonly figure: string;
  /** what stands against it, in a few words: `Maxwell's elliptic form` */
  readonly against: string;
  /** unit of the error in the table: `%` (relative), or an absolute unit such as `dB` or `ohm` */
  readonly errorUnit: string;
  readonly file: ReferenceFile;
  readonly ids: RegExp;
  readonly check: (entry: Entry) => readonly Comparison[];
}

/** Records that cannot apply to this engine, each with the reason. */
export interface LeftOut {
  readonly file: ReferenceFile;
  readonly ids: RegExp;
  readonly reason: string;
}

export function reference(file: ReferenceFile): readonly Entry[] {
  return JSON.parse(readFileSync(new URL(`../../reference/${file}.json`, import.meta.url), 'utf8')) as Entry[];
}
