import type { Arrival } from '../model.ts';
import { type Gain, gain } from './far-field.ts';
import { frontToBack, onCircle, strongestDirection } from './pattern.ts';
import type { Discretised, WireSolution } from './solve-wires.ts';

/** A pattern in a few numbers. */
export interface PatternSummary {
  readonly strongest: { readonly arrival: Arrival; readonly gain: Gain };
  /** strongest direction over the opposite bearing [dB]; null where nothing goes one of the two ways */
  readonly frontToBack: number | null;
  /** width between half-power points round the strongest direction [rad], level and upright; null where the pattern does not fall so far */
  readonly width: { readonly level: number | null; readonly upright: number | null };
}

/** Half the power [dB]. */
const HALF = 10 * Math.log10(2);
const STEP = Math.PI / 180;

export function patternSummary(d: Discretised, s: WireSolution): PatternSummary {
  const strongest = strongestDirection(d, s);
  const { azimuth, elevation } = strongest.arrival;
  const least = (strongest.gain.total ?? Number.NEGATIVE_INFINITY) - HALF;
  const fallen = (arrival: Arrival) => (gain(d, s, arrival).total ?? Number.NEGATIVE_INFINITY) < least;
  return {
    strongest,
    frontToBack: frontToBack(d, s, strongest.arrival),
    width: {
      level: width((turn) => fallen({ azimuth: azimuth + turn, elevation })),
      upright: width((turn) => fallen(onCircle(azimuth, elevation + turn))),
    },
  };
}

/** Angle between the first places on either side where the pattern has fallen, found by steps and halving; null where it does not fall on one of them. */
function width(fallen: (turn: number) => boolean): number | null {
  const side = (sign: 1 | -1): number | null => {
    for (let turn = STEP; turn <= Math.PI; turn += STEP) {
      if (!fallen(sign * turn)) continue;
      let [inside, outside] = [turn - STEP, turn];
      for (let i = 0; i < 12; i++) {
        const middle = (inside + outside) / 2;
        if (fallen(sign * middle)) outside = middle;
        else inside = middle;
      }
      return (inside + outside) / 2;
    }
    return null;
  };
  const [left, right] = [side(-1), side(1)];
  return left === null || right === null ? null : left + right;
}
