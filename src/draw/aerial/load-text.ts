import type { WireLoad } from '#engine';

const PREFIXES: readonly (readonly [number, string])[] = [
  [1e6, 'M'],
  [1e3, 'k'],
  [1, ''],
  [1e-3, 'm'],
  [1e-6, 'µ'],
  [1e-9, 'n'],
  [1e-12, 'p'],
];

/** Three figures and a prefix of engineering: `2.2 µH`. */
function quantity(value: number, unit: string): string {
  const size = Math.abs(value);
  const [factor, prefix] = PREFIXES.find(([f]) => size >= f * 0.9995) ?? PREFIXES.at(-1)!;
  return size === 0 ? `0 ${unit}` : `${Number((value / factor).toPrecision(3))} ${prefix}${unit}`;
}

/** Whether a load is more than a piece of wire. */
export const doesSomething = (load: WireLoad): boolean =>
  load.kind === 'impedance'
    ? load.resistance !== 0 || load.reactance !== 0
    : load.kind === 'parallel' || load.capacitance !== undefined || (load.resistance ?? 0) !== 0 || (load.inductance ?? 0) !== 0;

/** What a load is, for its label: `10 Ω`, `50 + j20 Ω`, `2.2 µH + 12 pF in series`. */
export function loadText(load: WireLoad): string {
  if (load.kind === 'impedance') {
    if (load.reactance === 0) return quantity(load.resistance, 'Ω');
    const sign = load.reactance < 0 ? '−' : '+';
    return `${Number(load.resistance.toPrecision(3))} ${sign} j${Number(Math.abs(load.reactance).toPrecision(3))} Ω`;
  }
  const parts = [
    load.resistance === undefined ? '' : quantity(load.resistance, 'Ω'),
    load.inductance === undefined ? '' : quantity(load.inductance, 'H'),
    load.capacitance === undefined ? '' : quantity(load.capacitance, 'F'),
  ].filter((part) => part !== '');
  if (parts.length === 0) return 'open';
  return parts.length === 1 ? parts[0]! : `${parts.join(' + ')} in ${load.kind === 'series' ? 'series' : 'parallel'}`;
}
