/** Deeper than any set file goes; deeper ones only make parsers fall over. */
const DEEPEST = 40;
/** Keys that are no data but a way into the objects of the program. */
const NO_DATA: ReadonlySet<string> = new Set(['__proto__', 'constructor', 'prototype']);

/** JSON from strangers: the value, or why it is not taken. */
export function readHostileJson(
  text: string,
): { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly why: string } {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (e) {
    return { ok: false, why: `it is not JSON: ${e instanceof Error ? e.message : String(e)}` };
  }
  const why = wrong(value, 0);
  return why === null ? { ok: true, value } : { ok: false, why };
}

function wrong(value: unknown, depth: number): string | null {
  if (typeof value !== 'object' || value === null) return null;
  if (depth > DEEPEST) return `it is nested more than ${DEEPEST} deep`;
  for (const [key, inner] of Object.entries(value)) {
    if (NO_DATA.has(key)) return `a key "${key}" is no part of a set file`;
    const found = wrong(inner, depth + 1);
    if (found !== null) return found;
  }
  return null;
}
