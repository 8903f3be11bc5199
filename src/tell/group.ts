import type { Figure } from '#engine';

/** Figures under one heading: a station's, or the part's own. */
export interface Group {
  readonly heading: string;
  readonly figures: readonly Figure[];
  readonly remarks: readonly string[];
  /** figures in rows, such as the places of a dial */
  readonly rows?: readonly (readonly Figure[])[];
  /** what each row is about, where its figures do not say it */
  readonly rowNames?: { readonly head: string; readonly names: readonly string[] };
  /** how the rows' lengths are told to people: as they are read off a rule, where three digits will not do */
  readonly toTheMillimetre?: true;
}
