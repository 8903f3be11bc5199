import { C, type Complex } from '../numeric/index.ts';
import type { Band } from './emf-filter.ts';
import { type CircleSample, fitTaps } from './unit-circle-fit.ts';

/** Taps on the detector's present current and on those before. */
export const REACTION_TAPS = 3;

const BAND_POINTS = 13;
const CIRCLE_POINTS = 128;
/** Beyond this angle three taps reach no more [rad a sample]. */
const FARTHEST = 1.8;
/** Angle about which nearness to the reference begins to count [rad a sample]. */
const NEAR = 0.3;
const HALVINGS = 20;

/**
 * Taps that bring the sampled impedance of a port nearer to the true one in the bands of the stations.
 *
 * A current that turns by some angle a sample does not run straight between samples: its triangle hold falls short by up to a few per cent. Three taps fitted
 * by least squares take most of that up. But a triangle hold keeps a passive circuit passive whatever the law draws (|Z - 1/(2 g)| <= 1/(2 g)
 * for a circuit that holds the conductance g), and so must what is used here: of the taps only the share is taken with which that still holds all around
 * the circle.
 *
 * @param wanted - impedance of the port, g across it, at a frequency from the reference [ohm]
 * @param held - what the hold makes of it at an angle [rad a sample]
 * @param conductance - g [S]
 * @returns [ohm], the present first
 */
export function reactionTaps(
  wanted: (frequency: number) => Complex,
  held: (angle: number) => Complex,
  conductance: number,
  bands: readonly Band[],
  rate: number,
): Complex[] {
  const samples: CircleSample[] = [];
  for (const b of bands)
    for (let k = 0; k < BAND_POINTS; k++) {
      const frequency = b.middle + b.half * ((2 * k) / (BAND_POINTS - 1) - 1);
      const angle = (2 * Math.PI * frequency) / rate;
      if (Math.abs(angle) > FARTHEST) continue;
      samples.push({ angle, value: C.sub(wanted(frequency), held(angle)), weight: 1 / (NEAR + Math.abs(angle)) });
    }
  const taps = fitTaps([samples], REACTION_TAPS, 0).taps[0]!;
  const share = passiveShare(taps, held, conductance);
  return taps.map((t) => C.scale(t, share));
}

/** The largest share of the taps that leaves the circuit passive: Re Z >= g |Z|^2 all around the circle. */
function passiveShare(taps: readonly Complex[], held: (angle: number) => Complex, conductance: number): number {
  const circle = Array.from({ length: CIRCLE_POINTS }, (_, k) => {
    const angle = 2 * Math.PI * ((k + 0.5) / CIRCLE_POINTS - 0.5);
    const whole = taps.reduce((sum: Complex, t, d) => C.add(sum, C.mul(t, C.cis(-angle * d))), C.ZERO);
    return { held: held(angle), whole };
  });
  const passive = (share: number): boolean =>
    circle.every((p) => {
      const z = C.add(p.held, C.scale(p.whole, share));
      return z.re >= conductance * C.abs2(z);
    });
  if (passive(1)) return 1;
  let low = 0;
  let high = 1;
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (low + high) / 2;
    if (passive(middle)) low = middle;
    else high = middle;
  }
  return low;
}
