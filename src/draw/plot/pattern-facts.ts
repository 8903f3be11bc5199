import type { PatternPoint } from '#engine';

/** A cut through a pattern: round the compass at an elevation [rad], or upright through a bearing [rad]. */
export type PatternCut =
  | { readonly kind: 'azimuth'; readonly elevation: number; readonly points: readonly PatternPoint[] }
  | { readonly kind: 'elevation'; readonly azimuth: number; readonly points: readonly PatternPoint[] };

export interface Facts {
  readonly kind: PatternCut['kind'];
  /** of the points given; null where nothing is radiated */
  readonly greatest: { readonly angle: number; readonly gain: number } | null;
  /** gain the opposite way at the same elevation [dB]; null where there is none or it lies outside the cut */
  readonly back: number | null;
  readonly frontToBack: number | null;
}

const TURN = 2 * Math.PI;

/** The opposite bearing; in an upright cut the same height on the other side. */
export const backOf = (cut: PatternCut, angle: number): number => (cut.kind === 'azimuth' ? angle + Math.PI : Math.PI - angle);

/** What a reader wants to know of a cut. */
export function factsOf(cut: PatternCut): Facts {
  let greatest: { angle: number; gain: number } | null = null;
  for (const p of cut.points)
    if (p.gain.total !== null && (!greatest || p.gain.total > greatest.gain + 1e-9)) greatest = { angle: p.angle, gain: p.gain.total };
  const back = greatest ? gainTowards(cut, backOf(cut, greatest.angle)) : null;
  return { kind: cut.kind, greatest, back, frontToBack: greatest && back !== null ? greatest.gain - back : null };
}

/** Gain at an angle of the cut, between its points in proportion [dB]; null outside it or where a neighbour has none. */
export function gainTowards(cut: PatternCut, angle: number): number | null {
  const { points } = cut;
  for (let i = 0; i < points.length; i++) {
    const [a, b] = [points[i]!, points[(i + 1) % points.length]!];
    const wide = wrapped(b.angle - a.angle);
    const along = wrapped(angle - a.angle);
    // the gap of a half circle is no step of the cut
    if (wide > Math.PI / 2 || along > wide + 1e-9) continue;
    const [from, to] = [a.gain.total, b.gain.total];
    if (along < 1e-9) return from;
    if (wide - along < 1e-9) return to;
    return from === null || to === null ? null : from + ((to - from) * along) / wide;
  }
  return null;
}

const wrapped = (angle: number): number => {
  const turned = ((angle % TURN) + TURN) % TURN;
  return TURN - turned < 1e-9 ? 0 : turned;
};

/** `017°`. */
export function bearingWords(bearing: number): string {
  const degrees = Math.round((wrapped(bearing) * 180) / Math.PI) % 360;
  return `${String(degrees).padStart(3, '0')}°`;
}
