import { type Decimal, decimalValue } from './decimal.ts';

/** A number at the head of a text, and what follows it. Fractions cannot be kept as decimals, so their value stands alone. */
export type NumberAtHead =
  | { readonly ok: true; readonly decimal: Decimal | null; readonly value: number; readonly rest: string }
  | { readonly ok: false; readonly why: string; readonly mend: string };

const HEAD = /^([+-]?) ?(\d[\d.,]*|[.,]\d[\d.,]*)(?:[eE]([+-]?\d{1,6})(?![\d.,]))?/;
const FRACTION = /^(\d{1,9})\/(\d{1,9})/;

/**
 * Reads `12`, `-1.5`, `1e-3`, `0,5`, `1,234,567`, `1.234,5`, `3/4`, `1 1/4` and `1-1/4` at the head of a tidied text.
 *
 * A comma is the decimal sign wherever that is the only sense it can have. One comma before exactly three digits could be either
 * (`1,234`), and is refused with both readings.
 */
export function readNumberAtHead(text: string): NumberAtHead {
  const m = HEAD.exec(text);
  if (!m) return { ok: false, why: 'it does not begin with a number', mend: 'Write the number first' };
  const [all, sign = '', body = '', power] = m;
  const rest = text.slice(all.length);
  const plain = plainDigits(body);
  if (typeof plain !== 'string') return plain;
  if (power === undefined && /^\d+$/.test(body)) {
    const fraction = readFraction(sign, body, rest);
    if (fraction) return fraction;
  }
  const decimal = { mantissa: `${sign === '-' ? '-' : ''}${plain}`, exponent: Number(power ?? 0) };
  return { ok: true, decimal, value: decimalValue(decimal), rest: rest.trimStart() };
}

/** The digits with a decimal point and nothing else, or why the separators make no sense. */
function plainDigits(body: string): string | { ok: false; why: string; mend: string } {
  const commas = body.split(',').length - 1;
  const points = body.split('.').length - 1;
  const malformed = {
    ok: false,
    why: `"${body}" is no number: its points and commas do not fit`,
    mend: 'Write a decimal point and no other separators',
  } as const;
  if (commas === 0 && points <= 1) return body;
  if (commas > 0 && points > 0) {
    const decimalSign = body.lastIndexOf(',') > body.lastIndexOf('.') ? ',' : '.';
    const at = body.lastIndexOf(decimalSign);
    const thousands = body.slice(0, at);
    const part = body.slice(at + 1);
    if (!isGrouped(thousands, decimalSign === ',' ? '.' : ',') || !/^\d+$/.test(part)) return malformed;
    return `${thousands.replace(/[.,]/g, '')}.${part}`;
  }
  const sign = commas > 0 ? ',' : '.';
  if (commas + points > 1) return isGrouped(body, sign) ? body.replaceAll(sign, '') : malformed;
  const [whole = '', part = ''] = body.split(',');
  if (part === '') return malformed;
  if (part.length === 3 && /^[1-9]\d{0,2}$/.test(whole))
    return {
      ok: false,
      why: `"${body}" could mean ${whole}.${part} or ${whole}${part}`,
      mend: `Write ${whole}.${part} for the one or ${whole}${part} for the other`,
    };
  return `${whole === '' ? '0' : whole}.${part}`;
}

function isGrouped(body: string, separator: string): boolean {
  const groups = body.split(separator);
  return groups.length > 1 && /^[1-9]\d{0,2}$/.test(groups[0]!) && groups.slice(1).every((g) => /^\d{3}$/.test(g));
}

/** `3/4` where the number at the head is the numerator, or ` 1/4` and `-1/4` after a whole number. */
function readFraction(sign: string, body: string, rest: string): NumberAtHead | null {
  const simple = FRACTION.exec(body + rest);
  const mixed = simple ? null : /^[ -] ?(\d{1,9})\/(\d{1,9})/.exec(rest);
  const found = simple ?? mixed;
  if (!found) return null;
  const [all, over, under] = found;
  if (Number(under) === 0) return { ok: false, why: 'a fraction cannot have zero below the line', mend: 'Write a fraction such as 3/4' };
  const size = (mixed ? Number(body) : 0) + Number(over) / Number(under);
  const left = simple ? (body + rest).slice(all.length) : rest.slice(all.length);
  return { ok: true, decimal: null, value: sign === '-' ? -size : size, rest: left.trimStart() };
}
