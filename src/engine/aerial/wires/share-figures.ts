import { type Figure, term } from '../../figure.ts';
import { C, type Complex } from '../../numeric/index.ts';
import type { WireShare } from './wire-shares.ts';

/** One part of an aerial, which may be several wires, with what it contributes. */
export interface PartShare {
  readonly part: string;
  readonly figures: readonly Figure[];
}

/** Square of an effective length below which it is only the rounding of sums that cancel [m^2]. */
const ROUNDING = 1e-20;
const METHOD = 'method of moments, wire by wire';
const SOURCE = 'Balanis, Antenna Theory, 3rd ed., sec. 2.15 (reciprocity), taken over the wires of the part alone';

/**
 * What each part of an aerial hears of a field, and what it costs.
 *
 * The part's share of the e.m.f. is its projection on the whole, so that all shares add up to one; a part that works against the others has a negative one. There are none of a field that the whole does not hear.
 *
 * @param parts - what each wire belongs to, in the order of the wires
 * @param field - components of the field, any scale; those of a mixed wave add as powers
 */
export function shareFigures(
  shares: readonly WireShare[],
  parts: readonly string[],
  field: { readonly horizontal: number; readonly vertical: number },
): readonly PartShare[] {
  const sums = new Map<string, { horizontal: Complex; vertical: Complex; loss: number }>();
  for (const { wire, horizontal, vertical, lossResistance } of shares) {
    const name = parts[wire]!;
    const sum = sums.get(name) ?? { horizontal: C.ZERO, vertical: C.ZERO, loss: 0 };
    sums.set(name, {
      horizontal: C.add(sum.horizontal, horizontal),
      vertical: C.add(sum.vertical, vertical),
      loss: sum.loss + lossResistance,
    });
  }
  const all = [...sums.values()];
  const whole = (key: 'horizontal' | 'vertical') => all.reduce((sum, part) => C.add(sum, part[key]), C.ZERO);
  const [h, v] = [whole('horizontal'), whole('vertical')];
  const [eh, ev] = [field.horizontal ** 2, field.vertical ** 2];
  const power = eh * C.abs2(h) + ev * C.abs2(v);
  const strength = eh + ev;
  const along = (a: Complex, b: Complex) => a.re * b.re + a.im * b.im;
  return [...sums].map(([part, own]) => {
    const share = power > ROUNDING * strength ? (eh * along(own.horizontal, h) + ev * along(own.vertical, v)) / power : null;
    const square = strength > 0 ? (eh * C.abs2(own.horizontal) + ev * C.abs2(own.vertical)) / strength : 0;
    const lengths = [
      term('|h_part|', 'effective length of the part, for this wave', Math.sqrt(square), 'm'),
      term('|h|', 'effective length of the whole', strength > 0 ? Math.sqrt(power / strength) : 0, 'm'),
    ];
    const figure = (name: string, label: string, value: number | null, unit: string, formula: string, source: string): Figure => ({
      name: `share.${name}`,
      label,
      value,
      unit,
      method: METHOD,
      working: { formula, terms: lengths, source },
    });
    return {
      part,
      figures: [
        figure('emf', 'part of the e.m.f.', share, '1', 'Re(h_part h*)/|h|^2', SOURCE),
        figure('effectiveLength', 'effective length', Math.sqrt(square), 'm', '|h_part|', SOURCE),
        figure(
          'lossResistance',
          'loss',
          own.loss,
          'ohm',
          "[R' integral of |I|^2 dl + loads on it] / |I(feed)|^2",
          'skin effect as for the whole',
        ),
      ],
    };
  });
}
