import type { Problem } from '#set-file';

/** A problem of a set file as a person reads it: where, what was given, why not, how to mend. */
export function problemText(p: Problem, file: string): string {
  const at = `${p.file ?? file}:${p.line}:${p.column}`;
  const what = [p.path, p.given].filter((t) => t !== '').join(' is ');
  return `${at}${what === '' ? '' : `: ${what}`}\n  ${p.why}\n  ${p.mend}`;
}
