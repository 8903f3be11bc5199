import { roundedDecimal, writeShifted } from './decimal.ts';
import { ENGINEERING_PREFIXES } from './prefixes.ts';

/** Units that take engineering prefixes, by the first word of the unit; what follows it is convention (`rms`, `peak`). */
const PREFIXED = new Set([
  'V',
  'A',
  'W',
  'H',
  'F',
  'ohm',
  'Hz',
  'm',
  's',
  'S',
  'S/m',
  'V/m',
  'A/W',
  'A/m',
  'V/W',
  'Pa',
  'Pa/V',
  'W/m^2',
  'eV',
]);
/** Where people stop using prefixes: no wave is 3 gigametres long, and 0.2 pF is never 200 fF. */
const LARGEST: Readonly<Record<string, number>> = { m: 3, s: 0, H: 0, F: 0, A: 3 };
const SMALLEST: Readonly<Record<string, number>> = { F: -12, ohm: -3, H: -9, Hz: -3, m: -9 };
const DEGREE = Math.PI / 180;
/** Units for the eye in place of the SI ones: name and how many of it make one SI unit. */
const FOR_THE_EYE: Readonly<Record<string, { readonly unit: string; readonly perSi: number; readonly places?: number }>> = {
  rad: { unit: '°', perSi: 1 / DEGREE, places: 1 },
  'Hz/rad': { unit: 'kHz/°', perSi: DEGREE / 1e3 },
};
const SIGNS: readonly (readonly [RegExp, string])[] = [
  [/\bohm\b/, 'Ω'],
  [/\buV\b/, 'µV'],
  [/\^2/, '²'],
  [/\^3/, '³'],
];

/**
 * Writes a figure's value with its unit, for people: prefixes of engineering, so many significant digits, decibels to a tenth.
 *
 * `null`, a physical "no", is written `none`.
 *
 * @param unit - as figures carry it: `V rms`, `dB re 1 uV/m`, `Hz`, `rad`, `1`
 * @throws RangeError if the value is neither null nor a finite number
 */
export function formatFigure(value: number | null, unit: string, digits = 4): string {
  if (value === null) return 'none';
  if (!Number.isFinite(value)) throw new RangeError(`A figure of ${value} ${unit} cannot be shown: only finite numbers and null can.`);
  const [first = '', ...conventions] = unit.split(' ');
  const tail = conventions.length > 0 ? ` ${pretty(conventions.join(' '))}` : '';
  if (first.startsWith('dB') || first === 'phon') return `${fixed(value, 1)} ${pretty(first)}${tail}`;
  if (first === 'K') return `${fixed(value, 1)} K${tail}`;
  const eye = FOR_THE_EYE[first];
  if (eye) {
    const shown = value * eye.perSi;
    const number = eye.places === undefined ? significant(shown, digits) : fixed(shown, eye.places);
    return `${number}${eye.unit.startsWith('°') ? '' : ' '}${eye.unit}${tail}`;
  }
  if (first === '1' || first === '') return `${significant(value, digits)}${tail}`;
  if (!PREFIXED.has(first)) return `${significant(value, digits)} ${pretty(first)}${tail}`;
  return `${withPrefix(value, first, digits)}${tail}`;
}

function pretty(unit: string): string {
  return SIGNS.reduce((text, [from, to]) => text.replace(from, to), unit);
}

function withPrefix(value: number, unit: string, digits: number): string {
  const d = roundedDecimal(value, digits);
  const wanted = Number(d.mantissa) === 0 ? 0 : 3 * Math.floor(d.exponent / 3);
  const power = Math.max(SMALLEST[unit] ?? -15, Math.min(LARGEST[unit] ?? 12, wanted));
  const number = Math.abs(d.exponent - power) > 6 ? `${d.mantissa}e${d.exponent - power}` : writeShifted(d, power);
  return `${number === '-0' ? '0' : number} ${ENGINEERING_PREFIXES.get(power)}${pretty(unit)}`;
}

/** Plain where that is short, else with a power of ten. */
function significant(value: number, digits: number): string {
  const d = roundedDecimal(value, digits);
  if (d.exponent >= 7 || d.exponent < -4) return Number(d.mantissa) === 0 ? '0' : `${d.mantissa}e${d.exponent}`;
  const text = writeShifted(d, 0);
  return text === '-0' ? '0' : text;
}

function fixed(value: number, places: number): string {
  const text = value.toFixed(places);
  return /^-0\.?0*$/.test(text) ? text.slice(1) : text;
}
