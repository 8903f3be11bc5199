/** A sign that stands for a diameter. */
export const DIAMETER = 'Ø';

/**
 * A length as a maker reads it off a rule: millimetres, to a tenth below 100 mm and to a hundredth below 10 mm; from 10 m metres, to 10 mm.
 *
 * @param length - [m]
 */
export function lengthText(length: number): string {
  const mm = length * 1e3;
  if (mm >= 9999.5) return `${trimmed(length, 2)} m`;
  return `${trimmed(mm, mm < 9.995 ? 2 : mm < 99.95 ? 1 : 0)} mm`;
}

/** `2 × 720 mm`; a single one has no count. */
export const countedText = (count: number, text: string): string => (count === 1 ? text : `${count} × ${text}`);

export function trimmed(value: number, places: number): string {
  const text = value.toFixed(places);
  return places === 0 ? text : text.replace(/\.?0+$/, '');
}
