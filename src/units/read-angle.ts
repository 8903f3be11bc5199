import { readNumberAtHead } from './read-number.ts';

/** Sixteen points of the compass, clockwise from north. */
const POINTS = ['N', 'NNE', 'NE', 'ENE', 'E', 'ESE', 'SE', 'SSE', 'S', 'SSW', 'SW', 'WSW', 'W', 'WNW', 'NW', 'NNW'];
const WORDS: Readonly<Record<string, string>> = { NORTH: 'N', EAST: 'E', SOUTH: 'S', WEST: 'W' };

/** Bearing of a compass point, `NNE` or `north-east` [rad clockwise from north]; null if it is none. */
export function compassPoint(text: string): number | null {
  const letters = text
    .toUpperCase()
    .replace(/NORTH|EAST|SOUTH|WEST/g, (w) => WORDS[w]!)
    .replace(/[ -]/g, '');
  const at = POINTS.indexOf(letters);
  return at < 0 ? null : (at * Math.PI) / 8;
}

/** Why an angle in degrees, minutes and seconds cannot be read. */
export interface AngleFault {
  readonly why: string;
}

const MINUTES = /^([\d.,]+) ?'(?: ?([\d.,]+) ?")?$/;

/**
 * Reads `52°30'15"`, `45° 30'` and `12°`; null if there is no degree sign followed by minutes.
 *
 * @returns degrees
 */
export function sexagesimalDegrees(text: string): number | AngleFault | null {
  const sign = text.indexOf('°');
  if (sign < 0) return null;
  const tail = text.slice(sign + 1).trim();
  const m = MINUTES.exec(tail);
  if (!m) return null;
  const parts = [text.slice(0, sign), m[1]!, m[2] ?? '0'].map((part) => readNumberAtHead(part.trim()));
  const values: number[] = [];
  for (const part of parts) {
    if (!part.ok) return { why: part.why };
    if (part.rest !== '') return null;
    values.push(part.value);
  }
  const [degrees, minutes, seconds] = values as [number, number, number];
  if (!Number.isInteger(degrees)) return { why: 'degrees with minutes must be whole' };
  if (minutes >= 60 || seconds >= 60) return { why: 'minutes and seconds must be below 60' };
  const size = Math.abs(degrees) + minutes / 60 + seconds / 3600;
  return text.startsWith('-') ? -size : size;
}
