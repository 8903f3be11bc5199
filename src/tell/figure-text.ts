import type { Figure } from '#engine';
import { formatFigure } from '#units';

/** A figure's value with unit. */
export const valueText = (f: Figure): string => formatFigure(f.value, f.unit, 3);

/** Its likely range, `3.1 to 9.8 mV/m`; empty where none is known. */
export function rangeText(f: Figure): string {
  if (f.low === undefined || f.high === undefined) return '';
  return `${formatFigure(f.low, f.unit, 2)} to ${formatFigure(f.high, f.unit, 2)}`;
}

/** How a figure came about, for reading: formula, numbers put in, source, validity. */
export function workingText(f: Figure): string {
  const { working } = f;
  const width = Math.max(0, ...working.terms.map((t) => t.symbol.length));
  return [
    `${f.name}: ${f.label}`,
    `  ${valueText(f)}${f.low === undefined ? '' : `   likely ${rangeText(f)}`}`,
    `  method   ${f.method}`,
    `  formula  ${working.formula}`,
    ...working.terms.map(
      (t) => `    ${t.symbol.padEnd(width)}  ${formatFigure(t.value, t.unit, 5)}${t.meaning === '' ? '' : `   ${t.meaning}`}`,
    ),
    `  source   ${working.source}`,
    ...(working.holds ? [`  holds    ${working.holds}`] : []),
  ].join('\n');
}
