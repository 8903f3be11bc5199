/** What the programme needs to know of a station's modulation. */
export type ProgrammeModulation =
  | {
      readonly kind: 'fm';
      /** peak deviation at full modulation [Hz] */
      readonly deviation: number;
      /** pre-emphasis time constant [s] */
      readonly preEmphasis: number;
      readonly stereo: boolean;
    }
  | {
      readonly kind: 'am';
      /** peak modulation depth of programme, 0 to 1 */
      readonly depth: number;
    };
