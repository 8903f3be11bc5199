/** What the station is taken to send when a set is judged by levels. */
export interface ProgrammeDescription {
  /** test tone [Hz] at rated deviation or depth */
  readonly tone: number;
  /** rms multiplex deviation of programme, as a share of BS.412's power limit: 0 dB is the limit itself */
  readonly level: number;
}
