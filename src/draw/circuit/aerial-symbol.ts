import { earthMarks } from '../aerial/symbols.ts';
import { add, type Vector, vector } from '../plane/vector.ts';
import type { Mark } from '../svg/mark.ts';
import type { AerialPlan } from './aerial-plan.ts';
import { labelMarks } from './label.ts';
import { leadMark, STROKE, symbolMarks } from './symbol.ts';

/** What an aerial's symbol takes to either side of its middle, and above its upper terminal [mm]. */
const HALF: Readonly<Record<AerialPlan['symbol'], number>> = { rod: 4, dipole: 13, folded: 13, loop: 6, impedance: 3 };
/** Half the gap between the two terminals of a dipole or loop. */
const GAP = 1.2;
const AIR = 2;

export interface DrawnAerial {
  readonly marks: readonly Mark[];
  /** [mm] */
  readonly width: number;
  /** terminals: to the set, and the other one */
  readonly hot: Vector;
  readonly cold: Vector;
}

/** An aerial whose left edge is at x, its terminals at the heights given. */
export function aerialMarks(plan: AerialPlan, x: number, hotY: number, coldY: number): DrawnAerial {
  if (plan.symbol === 'impedance') {
    const at = x + HALF.impedance;
    const [hot, cold] = [vector(at, hotY), vector(at, coldY)];
    const beside = vector(at + HALF.impedance + 1.2, (hotY + coldY) / 2);
    return {
      marks: [...symbolMarks('impedance', 'aerial', hot, cold), ...labelMarks(plan.label, beside, 'right', 'aerial')],
      width: 2 * HALF.impedance + 1.2 + plan.label.width + AIR,
      hot,
      cold,
    };
  }
  const half = Math.max(HALF[plan.symbol], plan.label.width / 2, plan.footLabel.width / 2);
  const centre = x + half;
  const apart = plan.symbol === 'rod' ? 0 : GAP;
  const [hot, cold] = [vector(centre + apart, hotY), vector(centre - apart, coldY)];
  const { marks, top } = upper(plan.symbol, vector(centre, hotY), coldY);
  return {
    marks: [
      ...marks,
      ...labelMarks(plan.label, vector(centre, top - 1.2), 'above', 'aerial'),
      ...footMarks(plan, cold),
      ...labelMarks(plan.footLabel, vector(centre, coldY + 8), 'below', 'aerial foot'),
    ],
    width: 2 * half + AIR,
    hot,
    cold,
  };
}

type Standing = 'rod' | 'dipole' | 'folded' | 'loop';

/** What stands above the line to the set; its leads are part of it. */
function upper(symbol: Standing, at: Vector, coldY: number): { readonly marks: readonly Mark[]; readonly top: number } {
  const [hot, cold] = [vector(at.x + GAP, at.y), vector(at.x - GAP, coldY)];
  const line = (points: readonly Vector[]): Mark => ({ kind: 'polyline', points, ...STROKE });
  switch (symbol) {
    case 'rod': {
      const tip = vector(at.x, at.y - 13);
      return {
        marks: [leadMark('aerial', 'a', at, tip), line([add(tip, vector(-4, 0)), vector(at.x, at.y - 8), add(tip, vector(4, 0))])],
        top: tip.y,
      };
    }
    case 'dipole':
    case 'folded': {
      const y = at.y - 9;
      const arms = [-1, 1].map((s) => line([vector(at.x + s * GAP, y), vector(at.x + s * 13, y)]));
      const fold = line([vector(at.x - 13, y), vector(at.x - 13, y - 3), vector(at.x + 13, y - 3), vector(at.x + 13, y)]);
      return {
        marks: [
          leadMark('aerial', 'a', hot, vector(hot.x, y)),
          leadMark('aerial', 'b', cold, vector(cold.x, y)),
          ...arms,
          ...(symbol === 'folded' ? [fold] : []),
        ],
        top: symbol === 'folded' ? y - 3 : y,
      };
    }
    case 'loop': {
      const [bottom, top] = [at.y - 4, at.y - 14];
      const loop = line([
        vector(at.x - GAP, bottom),
        vector(at.x - 5, bottom),
        vector(at.x - 5, top),
        vector(at.x + 5, top),
        vector(at.x + 5, bottom),
        vector(at.x + GAP, bottom),
      ]);
      return {
        marks: [leadMark('aerial', 'a', hot, vector(hot.x, bottom)), leadMark('aerial', 'b', cold, vector(cold.x, bottom)), loop],
        top,
      };
    }
  }
}

/** What a rod works against, hanging from its lower terminal. */
function footMarks(plan: AerialPlan, at: Vector): readonly Mark[] {
  if (plan.symbol !== 'rod') return [];
  const below = vector(at.x, at.y + 2);
  const lead = leadMark('aerial', 'b', at, below);
  switch (plan.foot) {
    case 'earth':
      return [lead, ...earthMarks(below)];
    case 'plate':
      return [lead, plate(below)];
    default:
      // a wire that ends in the air
      return [leadMark('aerial', 'b', at, vector(at.x, at.y + 6.5))];
  }
}

/** Metal that is not the ground. */
const plate = (at: Vector): Mark => ({ kind: 'line', from: vector(at.x - 5, at.y), to: vector(at.x + 5, at.y), stroke: 'ink', width: 0.9 });
