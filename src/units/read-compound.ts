import { decimalValue } from './decimal.ts';
import type { DimensionName } from './dimensions.ts';
import { PREFIX_POWERS } from './prefixes.ts';
import { readNumberAtHead } from './read-number.ts';
import { type Reading, refuse } from './reading.ts';

const FEET_AND_INCHES = /^(.+?) ?(?:ft|feet|foot|') ?(\d.*?) ?(?:in|inch|inches|")$/;
/** The prefix in place of the decimal point: IEC 60062. */
const COMPONENT_CODE = /^(\d+)([pnumkKMGR])(\d+)$/;
const TO_ONE = /^([^:]+):([^:]+)$/;

/** Writings with two numbers, `5 ft 3 in`, `4k7`, `20:1`; null if the text is none of these. */
export function readCompound(given: string, text: string, name: DimensionName): Reading | null {
  switch (name) {
    case 'length':
    case 'diameter':
      return readFeetAndInches(given, text);
    case 'resistance':
    case 'capacitance':
    case 'inductance':
      return readComponentCode(text, name);
    case 'ratio':
      return readToOne(given, text);
    default:
      return null;
  }
}

function readFeetAndInches(given: string, text: string): Reading | null {
  const parts = FEET_AND_INCHES.exec(text);
  if (!parts) return null;
  const [feet, inches] = [wholeNumber(parts[1]!), wholeNumber(parts[2]!)];
  if (feet === null || inches === null) return null;
  if (inches >= 12) return refuse(given, 'twelve inches make a foot', 'Write fewer than 12 inches after the feet.');
  const sign = text.startsWith('-') ? -1 : 1;
  return { ok: true, value: (feet * 3048 + sign * inches * 254) / 1e4 };
}

function readComponentCode(text: string, name: DimensionName): Reading | null {
  const parts = COMPONENT_CODE.exec(text);
  if (!parts) return null;
  const [, whole, letter, part] = parts;
  if (letter === 'R' && name !== 'resistance') return null;
  return { ok: true, value: decimalValue({ mantissa: `${whole}.${part}`, exponent: letter === 'R' ? 0 : PREFIX_POWERS[letter!]! }) };
}

function readToOne(given: string, text: string): Reading | null {
  const parts = TO_ONE.exec(text);
  if (!parts) return null;
  const [over, under] = [wholeNumber(parts[1]!), wholeNumber(parts[2]!)];
  if (over === null || under === null) return null;
  return under === 0 ? refuse(given, 'a ratio to zero has no value', 'Write it like "20:1".') : { ok: true, value: over / under };
}

/** The text as one number with nothing after it. */
function wholeNumber(text: string): number | null {
  const number = readNumberAtHead(text.trim());
  return number.ok && number.rest === '' ? number.value : null;
}
