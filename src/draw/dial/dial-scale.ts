import { GivenError } from '#engine';

/** A station on the dial. */
export interface DialStation {
  readonly label: string;
  /** carrier [Hz] */
  readonly frequency: number;
  /** where it is heard best [rad], loudest first: for FM one on either flank; none where the dial does not reach it */
  readonly points: readonly { readonly angle: number }[];
}

/** A dial as numbers: angles count from least capacitance. */
export interface DialScale {
  /** from one end to the other [rad] */
  readonly rotation: number;
  /** angles ascending [rad] and the frequency tuned to there [Hz]; null where there is none. A point a degree is enough */
  readonly points: readonly { readonly angle: number; readonly frequency: number | null }[];
  readonly stations: readonly DialStation[];
}

/** What happens as the knob is turned clockwise, or as the pointer goes to the right. */
export type PointerSense = 'rising' | 'falling';

/** A dial made ready: what is where along its travel, 0 at the left end, 1 at the right. */
export interface Travel {
  /** share of the travel at an angle of the capacitor; beyond its ends outside 0 to 1 */
  ofAngle(angle: number): number;
  /** share at which a frequency is tuned to; null where the dial does not reach it */
  ofFrequency(frequency: number): number | null;
  /** angle of the capacitor at the left end, and at the right [rad] */
  readonly ends: readonly [number, number];
  /** [Hz]; null where nothing is tuned to at all */
  readonly range: { readonly lowest: number; readonly highest: number } | null;
}

/** @throws GivenError for a dial that cannot be */
export function travelOf(scale: DialScale, sense: PointerSense): Travel {
  check(scale);
  const { rotation } = scale;
  const known = scale.points.filter((p): p is { angle: number; frequency: number } => p.frequency !== null);
  const falls = known.length < 2 || known[0]!.frequency > known.at(-1)!.frequency;
  const forward = falls === (sense === 'falling');
  const ofAngle = (angle: number): number => (forward ? angle : rotation - angle) / rotation;
  const frequencies = known.map((p) => p.frequency);
  return {
    ofAngle,
    ofFrequency(frequency) {
      for (let i = 0; i + 1 < scale.points.length; i++) {
        const [a, b] = [scale.points[i]!, scale.points[i + 1]!];
        if (a.frequency === null || b.frequency === null) continue;
        const along = (frequency - a.frequency) / (b.frequency - a.frequency);
        if (along >= -1e-9 && along <= 1 + 1e-9) return ofAngle(a.angle + along * (b.angle - a.angle));
      }
      return null;
    },
    ends: forward ? [0, rotation] : [rotation, 0],
    range: known.length < 2 ? null : { lowest: Math.min(...frequencies), highest: Math.max(...frequencies) },
  };
}

function check({ rotation, points, stations }: DialScale): void {
  if (!(rotation > 0 && rotation < 1e4))
    throw new GivenError('scale.rotation', `${rotation} rad`, 'a dial turns through an angle', 'Give radians above 0.');
  points.forEach((p, i) => {
    if (!(p.angle >= 0 && p.angle <= rotation * (1 + 1e-9)) || (i > 0 && p.angle <= points[i - 1]!.angle))
      throw new GivenError(
        `scale.points[${i}].angle`,
        `${p.angle} rad`,
        'angles ascend from 0 to the rotation',
        'Sort the points, each angle once.',
      );
    if (p.frequency !== null && !(p.frequency > 0 && p.frequency < 1e15))
      throw new GivenError(`scale.points[${i}].frequency`, `${p.frequency} Hz`, 'it is no frequency', 'Give hertz, or null for none.');
  });
  stations.forEach((s, i) => {
    s.points.forEach((p, k) => {
      if (!Number.isFinite(p.angle))
        throw new GivenError(`scale.stations[${i}].points[${k}].angle`, `${p.angle}`, 'it is an angle', 'Give radians.');
    });
  });
}
