import type { Field } from '#set-file';

/** `innerDiameter` as it is read: `inner diameter`. */
export const inWords = (key: string): string => key.replace(/([a-z])([A-Z])/g, (_, a: string, b: string) => `${a} ${b.toLowerCase()}`);

/** A name for a field in a list of its kind. */
export function nameOf(field: Field): string {
  if (!/^\d+$/.test(field.key)) return inWords(field.key);
  const given = field.given;
  const own = typeof given === 'object' && given !== null && 'name' in given ? String(given.name) : '';
  return own || `no. ${Number(field.key) + 1}`;
}

/** A value as it stands in a file, for a line of text. */
export function asText(value: unknown): string {
  if (value === undefined) return '';
  return typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean' ? String(value) : JSON.stringify(value);
}

/** Of the control of a field: names that people give may have blanks in them, which part the words of a list of ids. */
export const idOf = (path: Field['path']): string => `field-${path.join('-').replaceAll(/\s/g, '_')}`;
