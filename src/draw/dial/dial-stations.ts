import { spread } from '../placing/spread.ts';
import { scale as by, type Vector, vector } from '../plane/vector.ts';
import type { Mark } from '../svg/mark.ts';
import { wrapText } from '../svg/text-width.ts';
import { direction } from './dial-marks.ts';
import type { DialScale, DialStation, Travel } from './dial-scale.ts';
import { stationText, within } from './dial-words.ts';

const SIZE = 3;
const LEADING = 1.35;
const LONGEST = 38;
/** From the arc outwards [mm]: the marks, the bow over them, the names. */
const MARK = [0.8, 4.8] as const;
const BOW = 5.6;
const NAMES = 10;
/** Names may stand so far beyond the ends of the arc [rad]. */
const OVERRUN = 0.5;

/** Stations outside the arc: a mark for each best point, a bow over both, the name read outwards. */
export function stationMarks(scale: DialScale, stations: readonly DialStation[], travel: Travel, radius: number): readonly Mark[] {
  const shares = stations.map((s) => s.points.map((p) => travel.ofAngle(p.angle)).filter(within));
  const middle = shares.map((list) => (Math.min(...list) + Math.max(...list)) / 2);
  const lines = stations.map((s) => wrapText(stationText(s), SIZE, LONGEST));
  const sizes = lines.map((l) => l.length * SIZE * LEADING + 0.8);
  const half = Math.min(Math.PI, scale.rotation / 2 + OVERRUN);
  // a ring wide enough for all names at once
  const ring = Math.max(radius + NAMES, sizes.reduce((sum, s) => sum + s, 0) / (2 * half));
  const angles = middle.map((m) => (m - 0.5) * scale.rotation);
  const at = spread(
    angles.map((a, i) => ({ at: a * ring, size: sizes[i]! })),
    -half * ring,
    half * ring,
  ).map((along) => along / ring);
  return stations.flatMap((_, i): readonly Mark[] => {
    const out = (share: number, r: number): Vector => by(direction(scale, share), radius + r);
    const marks = shares[i]!.map(
      (share, k): Mark => ({
        kind: 'line',
        from: out(share, MARK[0]),
        to: out(share, MARK[1]),
        stroke: 'accent',
        width: k === 0 ? 0.7 : 0.4,
        ...(k === 0 ? {} : { dash: [0.8, 0.6] }),
        labels: { station: i, best: k === 0 ? 'loudest' : 'other' },
      }),
    );
    const [from, to] = [Math.min(...shares[i]!), Math.max(...shares[i]!)];
    const bow: Mark = {
      kind: 'polyline',
      points: Array.from({ length: 9 }, (_, k) => out(from + ((to - from) * k) / 8, BOW)),
      stroke: 'accent',
      width: 0.25,
    };
    const elbow = vector(Math.sin(at[i]!), -Math.cos(at[i]!));
    const lead: Mark = { kind: 'line', from: out(middle[i]!, BOW), to: by(elbow, ring - 0.8), stroke: 'quiet', width: 0.15 };
    return [...marks, ...(to - from > 1e-9 ? [bow] : []), lead, ...nameMarks(lines[i]!, at[i]!, ring, i)];
  });
}

/** Lines of a name along a radius, never upside down. */
function nameMarks(lines: readonly string[], angle: number, ring: number, station: number): readonly Mark[] {
  const out = vector(Math.sin(angle), -Math.cos(angle));
  const right = angle >= 0;
  const turn = right ? angle - Math.PI / 2 : angle + Math.PI / 2;
  // from line to line, at right angles to how they are read
  const down = vector(-Math.sin(turn), Math.cos(turn));
  const leading = SIZE * LEADING;
  return lines.map((text, k) => {
    const off = (k - (lines.length - 1) / 2) * leading + 0.36 * SIZE;
    return {
      kind: 'text',
      at: vector(out.x * ring + down.x * off, out.y * ring + down.y * off),
      text,
      size: SIZE,
      anchor: right ? 'start' : 'end',
      angle: turn,
      fill: 'ink',
      labels: { station, part: 'name' },
    };
  });
}
