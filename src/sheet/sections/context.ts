import type { Findings } from '../findings.ts';
import type { Paper } from '../pdf/paper.ts';
import type { Type } from '../pdf/type.ts';

/** What a section is made from. */
export interface Context {
  readonly findings: Findings;
  readonly paper: Paper;
  readonly type: Type;
  /** room for text on an upright page [mm] */
  readonly width: number;
  /** what reopens the set; null where it is too long to be of use on paper */
  readonly code: string | null;
  /** texts that are printed otherwise than they stand in the file, as they are printed */
  readonly changed: readonly string[];
}
