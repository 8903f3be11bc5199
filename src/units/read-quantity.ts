import { decimalValue } from './decimal.ts';
import { DIMENSIONS, type Dimension, type DimensionName, type Unit } from './dimensions.ts';
import { nearestWord } from './nearest.ts';
import { PREFIX_POWERS } from './prefixes.ts';
import { compassPoint, sexagesimalDegrees } from './read-angle.ts';
import { readCompound } from './read-compound.ts';
import { type NumberAtHead, readNumberAtHead } from './read-number.ts';
import { type Reading, refuse } from './reading.ts';
import { foreignCharacter, tidyText } from './tidy-text.ts';

/** Longer texts are no quantities, and need not be read to say so. */
const LONGEST = 80;

/**
 * Reads a quantity of a known dimension as a person writes it, or a plain number in SI units.
 *
 * @param given - text such as `12 pF`, `1 1/4 in`, `18 AWG`, `NNE`, or a number in the unit of the dimension (dB for levels, turns)
 * @param name - what the quantity must be
 * @returns the value in SI units, always finite, or why there is none and what to write instead
 */
export function readQuantity(given: unknown, name: DimensionName): Reading {
  const dimension: Dimension = DIMENSIONS[name];
  if (typeof given === 'number') return readPlainNumber(given, name, dimension);
  if (typeof given !== 'string') return refuse(given, `it is not ${dimension.label}`, example(dimension));
  if (given.length > LONGEST) return refuse(given, `it is too long to be ${dimension.label}`, example(dimension));
  const text = tidyText(given);
  if (text === '') return refuse(given, 'it is empty', example(dimension));
  const foreign = foreignCharacter(text);
  if (foreign) return refuse(given, foreign, `Type it again on the keyboard. ${example(dimension)}`);
  const reading = isAngle(name)
    ? readAngle(given, text, name, dimension)
    : (readCompound(given, text, name) ?? readWithUnit(given, text, dimension));
  return reading.ok && !Number.isFinite(reading.value) ? refuse(given, 'the number is too large to be held', example(dimension)) : reading;
}

function example(d: Dimension): string {
  return `Write it like ${d.examples.map((e) => JSON.stringify(e).replaceAll('\\"', '"')).join(' or ')}.`;
}

function isAngle(name: DimensionName): boolean {
  return name === 'angle' || name === 'bearing' || name === 'latitude' || name === 'longitude';
}

function readPlainNumber(given: number, name: DimensionName, d: Dimension): Reading {
  if (!Number.isFinite(given)) return refuse(given, 'it is not a finite number', example(d));
  // a bare 45 may be degrees or radians; zero is zero in both
  if (isAngle(name) && given !== 0)
    return refuse(given, 'a bare number could be degrees or radians', `Write "${given}°" or "${given} rad".`);
  return { ok: true, value: given };
}

/** Angles have writings of their own: compass points, minutes and seconds, hemispheres. */
function readAngle(given: string, text: string, name: DimensionName, d: Dimension): Reading {
  if (name === 'bearing') {
    const point = compassPoint(text);
    if (point !== null) return { ok: true, value: point };
    if (/^[a-z -]+$/i.test(text)) return refuse(given, 'it is no point of the compass', example(d));
  }
  const onGlobe = name === 'latitude' || name === 'longitude';
  const hemisphere = onGlobe ? /^(.*?) ?([NSEWnsew])$/.exec(text) : null;
  const letter = hemisphere?.[2]?.toUpperCase();
  if (letter && 'NS'.includes(letter) !== (name === 'latitude'))
    return refuse(given, `${letter} does not belong to ${d.label}`, example(d));
  const body = hemisphere ? hemisphere[1]! : text;
  if (letter && /^[+-]/.test(body)) return refuse(given, `it has both a sign and the letter ${letter}`, 'Keep one of the two.');
  const sign = letter === 'S' || letter === 'W' ? -1 : 1;
  const sexagesimal = sexagesimalDegrees(body);
  if (sexagesimal !== null && typeof sexagesimal === 'object') return refuse(given, sexagesimal.why, example(d));
  const reading = sexagesimal === null ? readWithUnit(given, body, d) : ({ ok: true, value: sexagesimal * (Math.PI / 180) } as const);
  return reading.ok ? { ok: true, value: sign * reading.value } : reading;
}

function readWithUnit(given: string, text: string, d: Dimension): Reading {
  const gaugeOfZeros = /^([2-4])\/0 ?AWG$/.exec(text);
  if (gaugeOfZeros && d.units.AWG)
    return inUnit(given, { ok: true, decimal: null, value: 1 - Number(gaugeOfZeros[1]), rest: 'AWG' }, d.units.AWG, d);
  const number = readNumberAtHead(text);
  if (!number.ok) return refuse(given, number.why, `${number.mend}. ${example(d)}`);
  const written = number.rest.replaceAll(' ', '');
  if (written === '') {
    if (d.bareText) return inUnit(given, number, d.symbol === 'rad' ? d.units.deg! : { power: 0 }, d);
    // zero of anything that starts at nought is the same in every unit
    if (number.value === 0 && d.symbol !== 'K') return { ok: true, value: 0 };
    return refuse(given, 'it has no unit', `${example(d)} A plain number, without quotation marks, is taken in ${d.symbol}.`);
  }
  const unit = findUnit(written, d);
  return unit ? inUnit(given, number, unit, d) : refuseUnit(given, number.rest, d);
}

function inUnit(given: string, number: Extract<NumberAtHead, { ok: true }>, unit: Unit, d: Dimension): Reading {
  if ('power' in unit) {
    const scaled = number.decimal ? decimalValue(number.decimal, unit.power) : number.value * 10 ** unit.power;
    if (scaled === 0 && number.decimal && /[1-9]/.test(number.decimal.mantissa))
      return refuse(given, 'the number is too small to be held', example(d));
    return { ok: true, value: scaled };
  }
  const value = unit.toSi(number.value);
  return value === null ? refuse(given, unit.rangeWords ?? 'it has no value in this unit', example(d)) : { ok: true, value };
}

/** The unit itself, with a prefix, or the prefix alone. */
export function findUnit(written: string, d: Dimension): Unit | null {
  if (Object.hasOwn(d.units, written)) return d.units[written]!;
  const upper = written.toUpperCase();
  if ((upper === 'AWG' || upper === 'SWG') && d.units[upper]) return d.units[upper];
  const names = d.symbol === '' ? [] : [d.symbol.replaceAll(' ', ''), ...d.spellings];
  if (names.includes(written)) return { power: 0 };
  for (const prefix of d.prefixes) {
    if (!written.startsWith(prefix)) continue;
    const rest = written.slice(1);
    if (names.includes(rest) || (rest === '' && d.prefixAlone)) return { power: PREFIX_POWERS[prefix]! };
  }
  return null;
}

function refuseUnit(given: string, written: string, d: Dimension): Reading {
  const packed = written.replaceAll(' ', '');
  if (d.symbol === 'dBi' && packed === 'dB')
    return refuse(given, 'decibels over what is not said', 'Write dBi (over isotropic) or dBd (over a half-wave dipole).');
  for (const other of Object.values(DIMENSIONS) as Dimension[])
    if (findUnit(packed, { ...other, prefixAlone: false }))
      return refuse(given, `"${written}" is the unit of ${other.label}, and ${d.label} is wanted`, example(d));
  const near = nearestUnit(packed, d);
  return refuse(given, `"${written.slice(0, 20)}" is no unit of ${d.label}`, near ? `Did you mean "${near}"? ${example(d)}` : example(d));
}

/** A unit that differs in the case of letters or by a slip. */
function nearestUnit(written: string, d: Dimension): string | null {
  const bases = d.symbol === '' ? [] : [d.symbol, ...d.spellings];
  const known = [...Object.keys(d.units), ...bases, ...Array.from(d.prefixes).flatMap((p) => bases.map((b) => p + b))];
  const sameLetters = known.filter((k) => k.toLowerCase() === written.toLowerCase());
  return sameLetters.length > 0 ? sameLetters.join('" or "') : nearestWord(written, known);
}
