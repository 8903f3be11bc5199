import { useRef } from 'preact/hooks';
import { formatFigure } from '#units';
import { angleAt, angleUnder, frequencyMarks, loudnessRing, onPage, polar } from './dial-shape.ts';
import { Fine } from './Fine.tsx';
import type { DialProps, StationOnDial } from './props.ts';

const [WIDTH, HEIGHT, CX, CY, RADIUS] = [420, 262, 210, 214, 122];
const SWELL = 44;
/** Loudness over which the ring swells [dB]. */
const RANGE = 40;
const DEGREE = Math.PI / 180;

/** The big dial: a half circle that is dragged or turned by keys, with loudness swelling on its rim and the frequencies inside. */
export function Dial(props: DialProps) {
  const { rotation, table, angle, stations, loudness, onTurn, onRest } = props;
  const svg = useRef<SVGSVGElement>(null);
  const held = (to: number): number => Math.min(rotation, Math.max(0, to));
  const turnTo = (e: PointerEvent): void => {
    const box = svg.current?.getBoundingClientRect();
    if (!box) return;
    const scale = WIDTH / box.width;
    onTurn(angleUnder((e.clientX - box.left) * scale, (e.clientY - box.top) * scale, CX, CY, rotation));
  };
  const keys: Readonly<Record<string, number>> = {
    ArrowRight: angle + 0.1 * DEGREE,
    ArrowUp: angle + 0.1 * DEGREE,
    ArrowLeft: angle - 0.1 * DEGREE,
    ArrowDown: angle - 0.1 * DEGREE,
    PageUp: angle + 5 * DEGREE,
    PageDown: angle - 5 * DEGREE,
    Home: 0,
    End: rotation,
  };
  const frequency = frequencyAt(table, angle);
  const hand = polar(CX, CY, RADIUS - 4, onPage(angle, rotation));
  return (
    <div class="dial">
      <div
        class="dial-face"
        role="slider"
        tabIndex={0}
        aria-label="dial"
        aria-valuemin={0}
        aria-valuemax={Number((rotation / DEGREE).toFixed(1))}
        aria-valuenow={Number((angle / DEGREE).toFixed(2))}
        aria-valuetext={`${(angle / DEGREE).toFixed(2)} degrees, ${frequency === null ? '' : `tank at ${formatFigure(frequency, 'Hz', 4)}`}`}
        onKeyDown={(e) => {
          const to = e.shiftKey && e.key.startsWith('Arrow') ? angle + ((keys[e.key] ?? angle) - angle) / 10 : keys[e.key];
          if (to === undefined) return;
          e.preventDefault();
          onTurn(held(to));
          onRest();
        }}
        onPointerDown={(e) => {
          e.currentTarget.setPointerCapture(e.pointerId);
          turnTo(e);
        }}
        onPointerMove={(e) => {
          if (e.currentTarget.hasPointerCapture(e.pointerId)) turnTo(e);
        }}
        onPointerUp={onRest}
      >
        <svg ref={svg} viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
          <path class="loudness" d={loudnessRing(loudness, rotation, CX, CY, RADIUS + 4, SWELL, RANGE)} />
          <path class="rim" d={`M${CX - RADIUS},${CY}A${RADIUS},${RADIUS} 0 0 1 ${CX + RADIUS},${CY}Z`} />
          {frequencyMarks(table, rotation, 0.23).map((m) => (
            <Mark key={m.frequency} page={onPage(m.angle, rotation)} text={short(m.frequency)} />
          ))}
          {stations.map((s) => (
            <Station key={s.name} station={s} table={table} rotation={rotation} />
          ))}
          <path class="hand" d={`M${CX},${CY}L${hand.x.toFixed(1)},${hand.y.toFixed(1)}`} />
          <circle class="knob" cx={CX} cy={CY} r={24} />
          <text class="reading" x={CX} y={CY + 44} text-anchor="middle">
            {(angle / DEGREE).toFixed(1)}°
            <tspan class="reading-frequency">{frequency === null ? '' : `, tank alone at ${formatFigure(frequency, 'Hz', 4)}`}</tspan>
          </text>
        </svg>
      </div>
      <Fine {...props} held={held} />
    </div>
  );
}

function Mark({ page, text }: { page: number; text: string }) {
  const [a, b, c] = [RADIUS, RADIUS - 8, RADIUS - 19].map((r) => polar(CX, CY, r, page));
  return (
    <g class="dial-mark">
      <path d={`M${a!.x},${a!.y}L${b!.x},${b!.y}`} />
      <text x={c!.x} y={c!.y + 4} text-anchor="middle">
        {text}
      </text>
    </g>
  );
}

function Station({ station, table, rotation }: { station: StationOnDial; table: DialProps['table']; rotation: number }) {
  const angle = station.humps[0] ?? angleAt(table, station.frequency);
  if (angle === null) return null;
  const page = onPage(angle, rotation);
  const [a, b] = [RADIUS, RADIUS + (station.picked ? SWELL + 14 : 12)].map((r) => polar(CX, CY, r, page));
  return (
    <g class={station.picked ? 'on-dial picked' : 'on-dial'}>
      <path d={`M${a!.x},${a!.y}L${b!.x},${b!.y}`} />
      {station.picked && (
        <text x={Math.min(WIDTH - 40, Math.max(40, b!.x))} y={b!.y - 4} text-anchor="middle">
          {station.name}
        </text>
      )}
    </g>
  );
}

export function frequencyAt(table: DialProps['table'], angle: number): number | null {
  for (let k = 1; k < table.length; k++) {
    const [a, b] = [table[k - 1]!, table[k]!];
    if (angle >= a.angle && angle <= b.angle) return a.frequency + ((angle - a.angle) / (b.angle - a.angle)) * (b.frequency - a.frequency);
  }
  return null;
}

const short = (f: number): string => (f >= 3e6 ? `${Number((f / 1e6).toFixed(1))}` : `${Number((f / 1e3).toFixed(0))}`);
