/**
 * The engine was given something that cannot be: a turn count below zero, a tap outside the coil.
 *
 * It is thrown at the edge of a stage, never inside a loop. A physical "no" (no signal, will not tune) is a result and
 * is never thrown.
 */
export class GivenError extends Error {
  override readonly name = 'GivenError';
  /** where it stands in the description, dotted: `tank.coil.turns` */
  readonly path: string;
  /** what was given, as written or with its SI unit */
  readonly given: string;
  /** why it cannot be */
  readonly why: string;
  /** how to mend it */
  readonly mend: string;

  constructor(path: string, given: string, why: string, mend: string) {
    super(`${path} is ${given}: ${why}. ${mend}`);
    this.path = path;
    this.given = given;
    this.why = why;
    this.mend = mend;
  }
}
