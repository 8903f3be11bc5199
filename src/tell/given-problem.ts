import type { GivenError } from '#engine';
import type { Problem, Source } from '#set-file';

/** What the engine refuses, as a problem of the file with its line. */
export function givenProblem(e: GivenError, source: Source): Problem {
  return { path: e.path, ...source.locate(e.path), given: e.given, why: e.why, mend: e.mend };
}
