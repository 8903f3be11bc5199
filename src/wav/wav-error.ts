/** A WAV file that cannot be read or written: what is wrong, why it matters, how to mend it; the message is what the user should see. */
export class WavError extends Error {
  override readonly name = 'WavError';
  readonly what: string;
  readonly why: string;
  readonly mend: string;

  constructor(what: string, why: string, mend: string) {
    super(`${what}: ${why}. ${mend}`);
    this.what = what;
    this.why = why;
    this.mend = mend;
  }
}
