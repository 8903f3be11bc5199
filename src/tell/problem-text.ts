import type { Problem } from '#set-file';

/** A problem of a set file as a person reads it: where, what was given, why not, how to mend. */
export function problemText(p: Problem, file: string): string {
  const at = p.line ? `${file}:${p.line}:${p.column}` : file;
  const head = p.path === '' ? at : `${at}: ${p.path}`;
  const given = p.given === '' ? '' : ` is ${p.given}`;
  return `${head}${given}\n  ${p.why}\n  ${p.mend}`;
}
