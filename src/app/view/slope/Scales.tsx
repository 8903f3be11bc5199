import type { SlopeCurves } from '#jobs';
import { formatFigure } from '#units';
import { NARROW, roundNumbers, type Shape } from './shape.ts';

/** Room for one number along the axis [px]. */
const EACH = 48;
const LEAST = 4;
const KILO = 1e3;

/** Axes, the carrier, and what is what. */
export function Scales({ curves, shape }: { readonly curves: SlopeCurves; readonly shape: Shape }) {
  const { slope, swing, amplitude, output, x, y } = shape;
  const half = curves.offset.at(-1)!;
  const numbers = roundNumbers(-half, half, Math.max(LEAST, (slope.right - slope.left) / EACH));
  const carrier = x(0);
  return (
    <g class="slope-scales">
      {numbers.map((f) => (
        <g key={f}>
          <path d={`M${x(f).toFixed(1)},${slope.bottom}v5`} />
          <text x={x(f)} y={slope.bottom + 18} text-anchor="middle">
            {f > 0 ? '+' : ''}
            {formatFigure(f / KILO, '1', 3).replace('-', '−')}
          </text>
        </g>
      ))}
      {roundNumbers(0, shape.most, 4).map((a) => (
        <g key={a}>
          <path d={`M${slope.left},${y(a).toFixed(1)}h-5`} />
          <text x={slope.left - 7} y={y(a) + 4} text-anchor="end">
            {a === 0 ? '0' : formatFigure(a, 'V', 2)}
          </text>
        </g>
      ))}
      <path class="frame" d={`M${slope.left},${slope.top}V${slope.bottom}H${slope.right}`} />
      <path class="frame" d={`M${amplitude.left},${slope.bottom}H${amplitude.right}`} />
      <path class="carrier" d={`M${carrier},${slope.top}V${swing.bottom}`} />
      <text class="name" x={slope.left + 4} y={slope.top - 12}>
        slope of the tank
      </text>
      <text class="name" x={amplitude.left} y={slope.top - 12}>
        amplitude
      </text>
      <text class="name" x={output.left} y={output.top - 12}>
        output
      </text>
      <text x={slope.left} y={slope.bottom + 36}>
        kHz from {shape.width < NARROW ? 'the carrier' : `the carrier, ${formatFigure(curves.carrier, 'Hz', 5)}`}
      </text>
      {curves.kind === 'fm' ? (
        <text class="name" x={slope.left} y={swing.bottom + 16}>
          {shape.width < NARROW ? 'swing, time runs down' : 'swing of the frequency, time runs down'}
        </text>
      ) : (
        <text class="name" x={slope.left} y={swing.top + 24}>
          {shape.width < NARROW ? 'no swing of frequency' : 'the frequency stands still'}
        </text>
      )}
      <text class="name" x={output.left} y={output.bottom + 16}>
        broken: undistorted
      </text>
    </g>
  );
}
