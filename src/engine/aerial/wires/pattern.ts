import type { Arrival } from '../model.ts';
import { type Gain, gain } from './far-field.ts';
import type { Discretised, WireSolution } from './solve-wires.ts';

export interface PatternPoint {
  /** bearing [rad] in a cut round the compass, elevation in a cut over the top: 0 to pi, the far side beyond pi/2 */
  readonly angle: number;
  readonly gain: Gain;
}

/** Gain all round the compass at one elevation, from north clockwise. */
export function azimuthCut(d: Discretised, s: WireSolution, elevation: number, points: number): readonly PatternPoint[] {
  return Array.from({ length: points }, (_, i) => {
    const angle = (2 * Math.PI * i) / points;
    return { angle, gain: gain(d, s, { azimuth: angle, elevation }) };
  });
}

/** Gain in the upright plane through a bearing: all round, or over the top where there is a ground. */
export function elevationCut(d: Discretised, s: WireSolution, azimuth: number, points: number): readonly PatternPoint[] {
  const ground = d.structure.ground.kind !== 'free-space';
  return Array.from({ length: points }, (_, i) => {
    const angle = ground ? (Math.PI * i) / (points - 1) : (2 * Math.PI * i) / points;
    return { angle, gain: gain(d, s, onCircle(azimuth, angle)) };
  });
}

/** Direction at an angle along the upright circle through a bearing: 0 there, pi/2 overhead, pi behind. */
export function onCircle(azimuth: number, angle: number): Arrival {
  const elevation = Math.asin(Math.sin(angle));
  return { azimuth: Math.cos(angle) >= 0 ? azimuth : azimuth + Math.PI, elevation };
}

/** Gain forward less gain backward at the same elevation [dB]; null where one of them is nothing. */
export function frontToBack(d: Discretised, s: WireSolution, front: Arrival): number | null {
  const forward = gain(d, s, front).total;
  const backward = gain(d, s, { azimuth: front.azimuth + Math.PI, elevation: front.elevation }).total;
  return forward === null || backward === null ? null : forward - backward;
}

/** Direction of the greatest gain, on a grid of `step` [rad] refined by halving; the first of equals, from north clockwise and level upwards. */
export function strongestDirection(
  d: Discretised,
  s: WireSolution,
  step = Math.PI / 18,
): { readonly arrival: Arrival; readonly gain: Gain } {
  const at = (azimuth: number, elevation: number) => {
    const arrival = { azimuth, elevation };
    return { arrival, gain: gain(d, s, arrival) };
  };
  let best = at(0, 0);
  const consider = (azimuth: number, elevation: number) => {
    const next = at(azimuth, elevation);
    if ((next.gain.total ?? Number.NEGATIVE_INFINITY) > (best.gain.total ?? Number.NEGATIVE_INFINITY) + 1e-9) best = next;
  };
  const rows = Math.round(Math.PI / 2 / step);
  for (let i = 0; i <= rows; i++)
    for (const side of [1, -1])
      for (let j = 0; j < 4 * rows; j++) consider((2 * Math.PI * j) / (4 * rows), (side * Math.PI * i) / (2 * rows));
  for (let h = step / 2; h > 1e-3; h /= 2)
    for (const [da, de] of [
      [h, 0],
      [-h, 0],
      [0, h],
      [0, -h],
    ] as const)
      consider(best.arrival.azimuth + da, Math.max(-Math.PI / 2, Math.min(Math.PI / 2, best.arrival.elevation + de)));
  return best;
}
