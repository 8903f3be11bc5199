/** Who listens, and in what room. */
export interface EarDescription {
  /** hearing level [dB HL] against frequency [Hz ascending]; empty for normal hearing (0 dB HL) */
  readonly hearingLevel: readonly { readonly frequency: number; readonly level: number }[];
  readonly room:
    | { readonly kind: 'noise-criterion'; readonly rating: number }
    /** A-weighted level [dB], spread over frequency as a quiet room's noise is */
    | { readonly kind: 'a-weighted'; readonly level: number }
    /** octave or third-octave band levels [dB SPL] */
    | { readonly kind: 'bands'; readonly bands: readonly { readonly frequency: number; readonly level: number }[] };
}
