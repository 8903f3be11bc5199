/** A point of a curve round the dial: how loud it is at an angle. */
export interface Loudness {
  /** [rad] */
  readonly angle: number;
  /** [dB], any zero */
  readonly level: number;
}

export interface Polar {
  readonly x: number;
  readonly y: number;
}

/** The dial's 0 is at the left, its end at the right: a half turn on the page whatever the capacitor's rotation is. */
export const onPage = (angle: number, rotation: number): number => Math.PI * (1 - angle / rotation);

export const polar = (cx: number, cy: number, radius: number, page: number): Polar => ({
  x: cx + radius * Math.cos(page),
  y: cy - radius * Math.sin(page),
});

/** Angle of the dial under a point of the page, held to its ends [rad]. */
export function angleUnder(x: number, y: number, cx: number, cy: number, rotation: number): number {
  const page = Math.atan2(cy - y, x - cx);
  // below the middle the nearer end counts
  const within = page >= 0 ? page : x < cx ? Math.PI : 0;
  return Math.min(rotation, Math.max(0, (1 - within / Math.PI) * rotation));
}

/** Frequencies that a dial is marked with: steps of 1, 2 or 5 such that marks are not nearer than `apart` on the page [rad]. */
export function frequencyMarks(
  table: readonly { readonly angle: number; readonly frequency: number }[],
  rotation: number,
  apart: number,
): readonly { readonly frequency: number; readonly angle: number }[] {
  if (table.length < 2) return [];
  const low = Math.min(...table.map((t) => t.frequency));
  const high = Math.max(...table.map((t) => t.frequency));
  const span = high - low;
  const marks: { frequency: number; angle: number }[] = [];
  const tooNear = (angle: number): boolean => marks.some((m) => (Math.abs(m.angle - angle) / rotation) * Math.PI < apart);
  // rounder numbers first, so that they are the ones that stay where the scale is crowded
  for (let step = 10 ** Math.ceil(Math.log10(span)); step > span / 60; step = finer(step))
    for (let f = Math.ceil(low / step) * step; f <= high * (1 + 1e-12); f += step) {
      const angle = angleAt(table, f);
      if (angle !== null && !tooNear(angle)) marks.push({ frequency: f, angle });
    }
  return marks.toSorted((a, b) => a.angle - b.angle);
}

const finer = (step: number): number => {
  const lead = Math.round(step / 10 ** Math.floor(Math.log10(step) + 1e-9));
  return lead === 5 ? (step * 2) / 5 : step / 2;
};

/** Where on the dial a frequency stands, by the table between its points; null beyond its ends. */
export function angleAt(table: readonly { readonly angle: number; readonly frequency: number }[], frequency: number): number | null {
  for (let k = 1; k < table.length; k++) {
    const [a, b] = [table[k - 1]!, table[k]!];
    if ((a.frequency - frequency) * (b.frequency - frequency) > 0 || a.frequency === b.frequency) continue;
    return a.angle + ((frequency - a.frequency) / (b.frequency - a.frequency)) * (b.angle - a.angle);
  }
  return null;
}

/** A ring whose outer edge swells with loudness, over `range` decibels below the loudest. */
export function loudnessRing(
  points: readonly Loudness[],
  rotation: number,
  cx: number,
  cy: number,
  inner: number,
  swell: number,
  range: number,
): string {
  if (points.length < 2) return '';
  const top = Math.max(...points.map((p) => p.level));
  const at = (p: Loudness, r: number): string => {
    const { x, y } = polar(cx, cy, r, onPage(p.angle, rotation));
    return `${x.toFixed(1)},${y.toFixed(1)}`;
  };
  const outer = points.map((p) => at(p, inner + swell * Math.max(0, 1 - (top - p.level) / range)));
  const back = points.toReversed().map((p) => at(p, inner));
  return `M${outer.join('L')}L${back.join('L')}Z`;
}
