import { axisUnit, figuresText } from '../plot/number-text.ts';

/** A part's value as it stands beside its symbol: three figures and a prefix. */
export function partValue(value: number, unit: 'F' | 'H' | 'ohm' | 'V' | 'A' | 'm'): string {
  const { unit: shown, factor } = axisUnit(unit, Math.abs(value));
  return `${figuresText(value / factor, 3)} ${shown}`;
}

/** Two values of one part with one unit: `5 – 25 pF`. */
export function partRange(low: number, high: number, unit: 'F'): string {
  const { unit: shown, factor } = axisUnit(unit, high);
  return `${figuresText(low / factor, 3)} – ${figuresText(high / factor, 3)} ${shown}`;
}
