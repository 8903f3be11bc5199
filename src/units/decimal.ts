/**
 * A decimal number as written: digits and a power of ten, so that a prefix can be applied without a rounding of its own.
 *
 * 12 pF must be the number nearest to 1.2e-11, not 12 times the number nearest to 1e-12: the last bit would differ, and what was
 * written out would not read back the same.
 */
export interface Decimal {
  /** sign, digits and point: `-12.5` */
  readonly mantissa: string;
  readonly exponent: number;
}

/** The nearest floating-point number to the decimal times a power of ten. */
export function decimalValue(d: Decimal, power = 0): number {
  return Number(`${d.mantissa}e${d.exponent + power}`);
}

/** The shortest decimal that reads back as exactly this number. */
export function shortestDecimal(value: number): Decimal {
  const [mantissa, exponent] = value.toExponential().split('e') as [string, string];
  return { mantissa: Object.is(value, -0) ? '-0' : mantissa, exponent: Number(exponent) };
}

/** The decimal rounded to so many significant digits, without needless zeros at its end. */
export function roundedDecimal(value: number, digits: number): Decimal {
  const [mantissa, exponent] = value.toExponential(digits - 1).split('e') as [string, string];
  return { mantissa: mantissa.includes('.') ? mantissa.replace(/\.?0+$/, '') : mantissa, exponent: Number(exponent) };
}

/** Writes the decimal divided by ten to the given power, with the point moved and not computed: no digit is lost. */
export function writeShifted(d: Decimal, power: number): string {
  const sign = d.mantissa.startsWith('-') ? '-' : '';
  const [whole = '', part = ''] = d.mantissa.replace(/^[+-]/, '').split('.');
  const digits = whole + part;
  const point = whole.length + d.exponent - power;
  if (/^0+$/.test(digits)) return `${sign}0`;
  const text =
    point <= 0
      ? `0.${'0'.repeat(-point)}${digits}`
      : point >= digits.length
        ? digits + '0'.repeat(point - digits.length)
        : `${digits.slice(0, point)}.${digits.slice(point)}`;
  return sign + text.replace(/^0+(?=\d)/, '');
}
