import { type Decimal, roundedDecimal, shortestDecimal, writeShifted } from './decimal.ts';
import { DIMENSIONS, type Dimension, type DimensionName } from './dimensions.ts';
import { ENGINEERING_PREFIXES, PREFIX_POWERS } from './prefixes.ts';
import { readQuantity } from './read-quantity.ts';

/** Beyond so many zeros before or behind the point a power of ten is easier to read. */
const LONGEST_RUN = 6;

/**
 * Writes a value so that it reads back to the very same bits, in the unit a person would use where that is possible.
 *
 * @throws RangeError if the value is not a finite number
 */
export function writeExact(value: number, name: DimensionName): string {
  const dimension: Dimension = DIMENSIONS[name];
  mustBeFinite(value);
  for (const candidate of friendlyExact(value, name)) {
    const back = readQuantity(candidate, name);
    if (back.ok && Object.is(back.value, value)) return candidate;
  }
  return writeWithPrefix(shortestDecimal(value), dimension);
}

/**
 * Writes a value for people, rounded to so many significant digits (dB: to a tenth).
 *
 * @throws RangeError if the value is not a finite number
 */
export function writeForPeople(value: number, name: DimensionName, digits = 4): string {
  const dimension: Dimension = DIMENSIONS[name];
  mustBeFinite(value);
  if (name === 'latitude' || name === 'longitude') return `${trimmed(value / DEGREE, 4)}°`;
  if (dimension.symbol === 'rad') return `${trimmed(value / DEGREE, 1)}°`;
  if (name === 'temperature') return `${trimmed(value - 273.15, 1)} °C`;
  if (dimension.symbol.startsWith('dB') && name !== 'lineLoss') return `${trimmed(value, 1)} ${dimension.symbol}`;
  return writeWithPrefix(roundedDecimal(value, digits), dimension).replace('u', 'µ').replace('ohm', 'Ω');
}

const DEGREE = Math.PI / 180;

function mustBeFinite(value: number): void {
  if (!Number.isFinite(value)) throw new RangeError(`${value} cannot be written as a quantity: only finite numbers can.`);
}

/** Writings in units that are not decimal multiples of the SI unit; each is tried, and kept only if it reads back exactly. */
function friendlyExact(value: number, name: DimensionName): readonly string[] {
  if (DIMENSIONS[name].symbol === 'rad') return [13, 15, 16, 17].map((digits) => `${plain(value / DEGREE, digits)}°`);
  if (name === 'temperature') return [12, 15].map((digits) => `${plain(value - 273.15, digits)} °C`);
  return [];
}

function plain(value: number, digits: number): string {
  return writeShifted(roundedDecimal(value, digits), 0);
}

function trimmed(value: number, places: number): string {
  const text = value.toFixed(places).replace(/\.?0+$/, places > 0 ? '' : '$&');
  return text === '-0' ? '0' : text;
}

/** `12 pF`, `98.4 MHz`, `5.5`. */
export function writeWithPrefix(d: Decimal, dimension: Dimension): string {
  const { symbol } = dimension;
  const wanted = 3 * Math.floor(d.exponent / 3);
  const zero = /^-?0(?:\.0*)?$/.test(d.mantissa);
  const [power, prefix] = zero ? [0, ''] : usablePrefix(wanted, dimension);
  const unit = `${prefix}${symbol}`;
  const number = Math.abs(d.exponent - power) > LONGEST_RUN ? `${d.mantissa}e${d.exponent - power}` : writeShifted(d, power);
  return unit === '' ? number : `${number} ${unit}`;
}

/** The engineering prefix nearest to the one wanted among those the unit takes, in plain letters. */
function usablePrefix(wanted: number, dimension: Dimension): readonly [number, string] {
  let best: readonly [number, string] = [0, ''];
  for (const [power, sign] of ENGINEERING_PREFIXES) {
    const letter = sign === 'µ' ? 'u' : sign;
    if (letter !== '' && !dimension.prefixes.includes(letter)) continue;
    if (Math.abs(power - wanted) < Math.abs(best[0] - wanted)) best = [PREFIX_POWERS[letter] ?? 0, letter];
  }
  return best;
}
