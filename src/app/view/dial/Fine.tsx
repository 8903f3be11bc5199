import { useRef } from 'preact/hooks';
import type { DialProps } from './props.ts';

const [WIDTH, HEIGHT] = [420, 74];
/** Loudness shown from top to bottom [dB]. */
const RANGE = 45;
const DEGREE = Math.PI / 180;

interface Grip {
  readonly x: number;
  readonly angle: number;
  readonly scale: number;
}

/** The neighbourhood of the hand, stretched: both humps of a station fill it, and dragging it turns the dial finely. */
export function Fine({ angle, loudness, stations, rotation, onTurn, onRest, held }: DialProps & { readonly held: (to: number) => number }) {
  const from = useRef<Grip | null>(null);
  const half = halfWidth(stations, rotation);
  const x = (a: number): number => WIDTH / 2 + ((a - angle) / half) * (WIDTH / 2);
  // one point more on either side, so that the curve runs out of the picture and does not end in it
  const before = loudness.findLastIndex((p) => p.angle < angle - half);
  const after = loudness.findIndex((p) => p.angle > angle + half);
  const inside = loudness.slice(Math.max(0, before), after < 0 ? undefined : after + 1);
  const top = Math.max(...loudness.map((p) => p.level), Number.NEGATIVE_INFINITY);
  const y = (level: number): number => 8 + Math.min(1, (top - level) / RANGE) * (HEIGHT - 24);
  const curve = inside.map((p) => `${x(p.angle).toFixed(1)},${y(p.level).toFixed(1)}`).join('L');
  const first = inside[0];
  const last = inside.at(-1);
  return (
    <div
      class="fine"
      aria-hidden="true"
      onPointerDown={(e) => {
        e.currentTarget.setPointerCapture(e.pointerId);
        from.current = { x: e.clientX, angle, scale: (2 * half) / e.currentTarget.clientWidth };
      }}
      onPointerMove={(e) => {
        const start = from.current;
        // the scale is dragged under the hand, which stays in the middle
        if (start) onTurn(held(start.angle - (e.clientX - start.x) * start.scale));
      }}
      onPointerUp={() => {
        from.current = null;
        onRest();
      }}
      onPointerCancel={() => {
        from.current = null;
      }}
    >
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
        {first && last && <path class="loudness" d={`M${x(first.angle)},${HEIGHT - 16}L${curve}L${x(last.angle)},${HEIGHT - 16}Z`} />}
        {ticks(angle, half).map((a) => (
          <g key={a} class="dial-mark">
            <path d={`M${x(a)},${HEIGHT - 16}v5`} />
            <text x={x(a)} y={HEIGHT - 1} text-anchor="middle">
              {Number((a / DEGREE).toFixed(2))}°
            </text>
          </g>
        ))}
        <path class="hand" d={`M${WIDTH / 2},2V${HEIGHT - 16}`} />
      </svg>
    </div>
  );
}

/** Wide enough for both humps of the picked station with room beside them, and never less than half a degree. */
function halfWidth(stations: DialProps['stations'], rotation: number): number {
  const humps = stations.find((s) => s.picked)?.humps ?? [];
  const apart = humps.length > 1 ? Math.abs(humps[1]! - humps[0]!) : 2 * DEGREE;
  return Math.min(rotation / 4, Math.max(0.5 * DEGREE, 2.5 * apart));
}

function ticks(middle: number, half: number): readonly number[] {
  const wide = (2 * half) / DEGREE;
  const step = ([0.1, 0.2, 0.5, 1, 2, 5, 10].find((s) => wide / s <= 8) ?? 20) * DEGREE;
  const first = Math.ceil((middle - half) / step);
  const last = Math.floor((middle + half) / step);
  return Array.from({ length: last - first + 1 }, (_, k) => (first + k) * step);
}
