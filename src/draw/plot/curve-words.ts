import type { Axis, AxisOptions } from './axis.ts';
import { valueText } from './number-text.ts';
import type { PlotMark, Series } from './series.ts';

/** A plot in words, for those who do not see it. */
export function curveWords(
  series: readonly Series[],
  options: { readonly x: AxisOptions; readonly y: AxisOptions },
  x: Axis,
  y: Axis,
  marks: readonly PlotMark[],
): string {
  const [ux, uy] = [options.x.unit ?? '', options.y.unit ?? ''];
  const curves = series.map((s) => {
    const known = s.points.filter((p): p is { x: number; y: number } => p.y !== null);
    if (known.length === 0) return `${s.label}: no values`;
    const [least, most] = [known.reduce((a, b) => (b.y < a.y ? b : a)), known.reduce((a, b) => (b.y > a.y ? b : a))];
    const value = (p: { x: number; y: number }) => `${valueText(p.y, uy)} at ${valueText(p.x, ux)}`;
    return `${s.label}: from ${value(known[0]!)} to ${value(known.at(-1)!)}, least ${value(least)}, greatest ${value(most)}`;
  });
  const scale = (a: AxisOptions) => (a.scale === 'log' ? ', logarithmic' : '');
  const shown = marks.map((m) => m.label);
  return [
    `Across: ${options.x.label}, ${valueText(x.from, ux)} to ${valueText(x.to, ux)}${scale(options.x)}.`,
    `Up: ${options.y.label}, ${valueText(y.from, uy)} to ${valueText(y.to, uy)}${scale(options.y)}.`,
    ...curves.map((c) => `${c}.`),
    ...(shown.length > 0 ? [`Marked: ${shown.join('; ')}.`] : []),
  ].join(' ');
}
