import type { AerialDescription } from '#engine';
import { aerialTitle } from '../aerial/described.ts';
import { lengthText } from '../aerial/length-text.ts';
import { turnsWords } from '../coil/turns-words.ts';
import { figuresText } from '../plot/number-text.ts';
import { type PartLabel, partLabel } from './label.ts';
import { partValue } from './part-value.ts';

/** How an aerial is drawn: what stands up, and what its other terminal is. */
export interface AerialPlan {
  readonly symbol: 'rod' | 'dipole' | 'folded' | 'loop' | 'impedance';
  /** below a rod: what it works against */
  readonly foot: 'earth' | 'plate' | 'wire' | null;
  readonly label: PartLabel;
  readonly footLabel: PartLabel;
}

const plan = (symbol: AerialPlan['symbol'], ...texts: readonly string[]): AerialPlan => ({
  symbol,
  foot: null,
  label: partLabel(...texts),
  footLabel: partLabel(),
});
const onFoot = (foot: AerialPlan['foot'], footText: readonly string[], ...texts: readonly string[]): AerialPlan => ({
  ...plan('rod', ...texts),
  foot,
  footLabel: partLabel(...footText),
});
const earthText = (resistance: number): string => `earth, ${partValue(resistance, 'ohm')}`;

/** The aerial as a symbol with what it is; null where the coil is the aerial. */
export function aerialPlan(aerial: AerialDescription): AerialPlan | null {
  switch (aerial.kind) {
    case 'coil':
      return null;
    case 'electrical': {
      const [first, ...more] = aerial.impedance;
      const value = more.length > 0 || !first ? 'impedance by frequency' : impedanceText(first.resistance, first.reactance);
      return plan('impedance', 'aerial', value);
    }
    case 'dipole':
      return plan('dipole', 'dipole', `${lengthText(aerial.length)} tip to tip`);
    case 'loop':
      return plan('loop', 'loop', `${turnsWords(aerial.turns)}, ${lengthText(aerial.diameter)} across`);
    case 'wire-to-earth':
      return onFoot(
        'earth',
        [earthText(aerial.earthResistance)],
        'aerial wire',
        `${lengthText(aerial.vertical)} up${aerial.horizontal > 0 ? `, ${lengthText(aerial.horizontal)} level` : ''}`,
      );
    case 'whip':
      return whipPlan(aerial);
    case 'wires':
      return wiresPlan(aerial);
  }
}

function whipPlan({ length, counterpoise: c }: Extract<AerialDescription, { kind: 'whip' }>): AerialPlan {
  const rod = ['rod', lengthText(length)];
  switch (c.kind) {
    case 'plane':
      return onFoot('plate', ['metal plane'], ...rod);
    case 'drop-wire':
      return onFoot('wire', ['drop wire', lengthText(c.length)], ...rod);
    case 'set':
      return onFoot('plate', ['the set itself'], ...rod);
    case 'earth-wire':
      return onFoot('earth', [`wire ${lengthText(c.length)} to earth, ${partValue(c.earthResistance, 'ohm')}`], ...rod);
  }
}

function wiresPlan({ shape }: Extract<AerialDescription, { kind: 'wires' }>): AerialPlan {
  const title = aerialTitle(shape).toLowerCase().replace('inverted v', 'inverted V').replace('v dipole', 'V dipole');
  switch (shape.kind) {
    case 'rod': {
      const { against } = shape;
      const rod = ['rod', lengthText(shape.rod.length)];
      if (against.kind === 'box') return onFoot('plate', ['case of the set'], ...rod);
      if (against.kind === 'radials') return onFoot('wire', [`${against.count} × radial`, lengthText(against.length)], ...rod);
      if (against.kind === 'drop-wire') return onFoot('wire', ['drop wire', lengthText(against.length)], ...rod);
      return onFoot('earth', [`wire ${lengthText(against.length)} to earth, ${partValue(against.earthResistance, 'ohm')}`], ...rod);
    }
    case 'dipole':
      return plan('dipole', title, `${lengthText(shape.length)} in all`);
    case 'folded-dipole':
      return plan('folded', title, `${lengthText(shape.length)} tip to tip`);
    case 'beam':
      return plan(shape.driven.element.kind === 'folded' ? 'folded' : 'dipole', title);
    case 'round-loop':
      return plan('loop', title, `${lengthText(shape.diameter)} across`);
    case 'square-loop':
      return plan('loop', title, `side ${lengthText(shape.side)}`);
    case 'free-list':
      return plan('dipole', title);
  }
}

function impedanceText(resistance: number, reactance: number): string {
  if (reactance === 0) return partValue(resistance, 'ohm');
  return `${partValue(resistance, 'ohm')} ${reactance > 0 ? '+' : '−'} j ${figuresText(Math.abs(reactance), 3)} Ω`;
}
