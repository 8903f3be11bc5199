/** Units that take prefixes of engineering on an axis. */
const PREFIXED = new Set(['Hz', 'V', 'A', 'W', 'H', 'F', 'Ω', 'ohm', 'm', 's', 'Pa', 'V/m', 'S']);
const PREFIXES: Readonly<Record<number, string>> = {
  9: 'G',
  6: 'M',
  3: 'k',
  0: '',
  [-3]: 'm',
  [-6]: 'µ',
  [-9]: 'n',
  [-12]: 'p',
  [-15]: 'f',
};
/** In place of a hyphen. */
const MINUS = '−';

/** A number with a proper minus sign and so many decimal places. */
export function fixedText(value: number, places: number): string {
  const text = Math.abs(value).toFixed(places);
  return value < 0 && Number(text) !== 0 ? `${MINUS}${text}` : text;
}

/** A number to so many figures, without needless zeros: `98.4`, `0.0012`, `1.5e7`. */
export function figuresText(value: number, digits: number): string {
  const plain = Number(value.toPrecision(digits));
  const size = Math.abs(plain);
  const text = size !== 0 && (size >= 1e6 || size < 1e-4) ? plain.toExponential().replace('e+', 'e') : `${plain}`;
  return text.replaceAll('-', MINUS);
}

const exponentOf = (size: number): number => Math.max(-15, Math.min(9, 3 * Math.floor(Math.log10(size) / 3 + 1e-9)));

/** The prefix a whole axis is written in, and what one of that unit is in the given one. */
export function axisUnit(unit: string, largest: number): { readonly unit: string; readonly factor: number } {
  const shown = unit === 'ohm' ? 'Ω' : unit;
  if (!PREFIXED.has(unit) || !(largest > 0)) return { unit: shown, factor: 1 };
  const exponent = exponentOf(largest);
  return { unit: `${PREFIXES[exponent]}${shown}`, factor: 10 ** exponent };
}

/** A decade of its own on a long logarithmic axis: `200`, `5 k`, `10 m`. */
export function decadeText(value: number): string {
  const exponent = value > 0 ? exponentOf(value) : 0;
  const prefix = PREFIXES[exponent]!;
  return `${figuresText(value / 10 ** exponent, 3)}${prefix === '' ? '' : ` ${prefix}`}`;
}

/** A value with its unit, for sentences: `98.4 MHz`, `73 Ω`, `−12.5 dB`. */
export function valueText(value: number, unit: string): string {
  const { unit: shown, factor } = axisUnit(unit, Math.abs(value));
  return `${figuresText(value / factor, 4)}${shown === '' ? '' : shown === '°' ? '°' : ` ${shown}`}`;
}
