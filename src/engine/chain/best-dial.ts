import { goldenMaximum } from '../numeric/index.ts';
import { type Evaluation, Tuned } from './evaluate.ts';
import type { Reception } from './receiver.ts';
import { type OutOfReach, type Resonance, resonance } from './tuning.ts';

/** One side of a station: where on the flank it is loudest. */
export interface FlankPoint {
  /** tank tuned above or below the carrier */
  readonly side: 'above' | 'below';
  /** [rad] */
  readonly angle: number;
  /** detuning in half bandwidths of the tank at rest, x = 2 Q df / f0 */
  readonly x: number;
  /** audio at the earpiece, rated tone [V rms] */
  readonly audio: number;
}

export interface BestDial {
  readonly resonance: Resonance;
  /** loudest first; one or two, since a flank may lie beyond the end of the dial; one for AM, which sits on or beside the top */
  readonly points: readonly FlankPoint[];
}

/** Detuning up to which a flank is always looked over, in half bandwidths at rest; a strong station damps the tank, and the search goes on while it pays. */
const FAR = 8;
const FARTHEST = 500;
/** Detuning either side of resonance within which AM is loudest: a reactive source moves the top a little. */
const BESIDE_TOP = 1;

/** Where to leave the dial for a station to be loudest with the rated tone: on either flank for FM, on top for AM. */
export function bestDial(reception: Reception, index: number): BestDial | OutOfReach {
  const signal = reception.signals[index]!;
  const r = resonance(reception.receiver, signal);
  if ('missing' in r) return r;
  const { modulation } = signal.received.station;
  const end = reception.receiver.tank.rotation;
  const direction = reception.receiver.tank.capacitance(end) > reception.receiver.tank.capacitance(0) ? 1 : -1;
  const angleAt = (x: number): number => r.angle - direction * x * r.halfWidth;
  const audioAt = (x: number): number => {
    const angle = angleAt(x);
    if (angle < 0 || angle > end) return 0;
    const tuned = new Tuned(reception, index, angle);
    return tuned.tone(tuned.ratedSwing).earpiece[1]!;
  };
  if (modulation.kind === 'am') {
    const x = goldenMaximum(audioAt, -BESIDE_TOP, BESIDE_TOP, 0.01);
    return { resonance: r, points: [{ side: x < 0 ? 'below' : 'above', angle: clamp(angleAt(x), end), x, audio: audioAt(x) }] };
  }
  const points: FlankPoint[] = [];
  for (const sign of [1, -1]) {
    const x = sign * flank((t) => audioAt(sign * t));
    const audio = audioAt(x);
    if (audio > 0 || points.length === 0) points.push({ side: sign > 0 ? 'above' : 'below', angle: clamp(angleAt(x), end), x, audio });
  }
  points.sort((a, b) => b.audio - a.audio);
  return { resonance: r, points };
}

/** What a flank point says, of any angle at which the set was evaluated. */
export function flankPointAt({ receiver: { tank } }: Reception, { resonance: r }: BestDial, { angle, rated }: Evaluation): FlankPoint {
  const direction = tank.capacitance(tank.rotation) > tank.capacitance(0) ? 1 : -1;
  const x = (direction * (r.angle - angle)) / r.halfWidth;
  return { side: x < 0 ? 'below' : 'above', angle, x, audio: rated.earpiece[1]! };
}

/** Detuning of the greatest audio on one flank: a coarse look in equal ratios, then golden section about the best. */
function flank(audioAt: (x: number) => number): number {
  const ratio = 1.5;
  let best = 0.1;
  let top = -1;
  for (let x = 0.1; x <= FAR || (best === x / ratio && x <= FARTHEST); x *= ratio) {
    const a = audioAt(x);
    if (a > top) {
      top = a;
      best = x;
    }
  }
  return goldenMaximum(audioAt, best / ratio, best * ratio, 0.01 * best);
}

const clamp = (angle: number, end: number): number => Math.min(Math.max(angle, 0), end);
