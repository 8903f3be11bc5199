import { useRef } from 'preact/hooks';
import type { SlopeCurves } from '#jobs';
import { formatFigure } from '#units';
import { seriesCsv } from '../parts/csv.ts';
import { asFile, saveFile, savePng } from '../parts/save.ts';
import { Handles } from './Handles.tsx';
import { Scales } from './Scales.tsx';
import { lineThrough, momentOf, overTime, PERIODS, shapeOf } from './shape.ts';
import type { Trial } from './trial.ts';
import { useMoment } from './use-moment.ts';

interface Props {
  readonly curves: SlopeCurves;
  readonly trial: Trial;
  readonly sentence: string;
  readonly width: number;
}

/** The slope with the carrier swinging on it: below the swing, to the right the amplitude that comes of it, and the output that follows. */
export function Picture({ curves, trial, sentence, width }: Props) {
  const svg = useRef<SVGSVGElement>(null);
  const shape = shapeOf(curves, width);
  const { rated } = curves;
  const fm = curves.kind === 'fm';
  const moment = useMoment((time) => svg.current && point(svg.current, curves, width, time));
  const slopeLine = (amplitude: Float64Array): string =>
    lineThrough(Array.from(amplitude, (a, i) => ({ x: shape.x(curves.offset[i]!), y: shape.y(a) })));
  const swept = Array.from(rated.amplitude, (a, i) => ({ x: shape.x(fm ? rated.modulation[i]! : 0), y: shape.y(a) }));
  return (
    <figure class="plot">
      <div class="scroll">
        <svg
          ref={svg}
          class="earshot-drawing slope-picture"
          xmlns="http://www.w3.org/2000/svg"
          width={width}
          height={shape.height}
          viewBox={`0 0 ${width} ${shape.height}`}
          role="img"
          aria-label="the slope"
          aria-describedby="slope-sentence"
          font-family="system-ui, sans-serif"
        >
          <Scales curves={curves} shape={shape} />
          {curves.builtAmplitude && <path class="slope-built" d={slopeLine(curves.builtAmplitude)} />}
          <path class="slope-line" d={slopeLine(curves.amplitude)} />
          <path class="slope-swept" d={lineThrough(swept)} />
          {fm && (
            <path class="slope-wave" d={lineThrough(overTime(rated, (t, i) => ({ x: shape.x(rated.modulation[i]!), y: shape.down(t) })))} />
          )}
          <path class="slope-wave" d={lineThrough(overTime(rated, (t, i) => ({ x: shape.across(t), y: shape.y(rated.amplitude[i]!) })))} />
          <path class="slope-pure" d={lineThrough(overTime(rated, (t, i) => ({ x: shape.across(t), y: shape.outputY(rated.pure[i]!) })))} />
          <path
            class="slope-wave"
            d={lineThrough(overTime(rated, (t, i) => ({ x: shape.across(t), y: shape.outputY(rated.output[i]!) })))}
          />
          <path class="slope-guide" data-moment="guide" />
          {(fm ? ['swing', 'slope', 'amplitude', 'output'] : ['slope', 'amplitude', 'output']).map((name) => (
            <circle key={name} class="slope-dot" data-moment={name} r={5.5} />
          ))}
          <Handles curves={curves} shape={shape} trial={trial} />
        </svg>
      </div>
      <figcaption>
        <button type="button" onClick={() => (moment.moving ? moment.hold() : moment.go())}>
          {moment.moving ? 'hold the dot' : 'let the dot swing'}
        </button>
        <label class="moment">
          moment of the swing
          <input
            type="range"
            min={0}
            max={PERIODS}
            step={0.01}
            value={moment.held}
            aria-valuetext={momentWords(curves, moment.held)}
            onInput={(e) => moment.hold(Number(e.currentTarget.value))}
          />
        </label>
        <button type="button" onClick={() => saveFile('slope.svg', asFile(svg.current!), 'image/svg+xml')}>
          SVG
        </button>
        <button type="button" onClick={() => void savePng('slope.png', svg.current!)}>
          PNG
        </button>
        <button type="button" onClick={() => saveFile('slope.csv', csvOf(curves), 'text/csv')}>
          CSV
        </button>
      </figcaption>
      <p id="slope-sentence" class="slope-sentence" aria-live="polite">
        {sentence}
      </p>
    </figure>
  );
}

/** Puts the dots and the line that joins them where the tone is. */
function point(svg: SVGSVGElement, curves: SlopeCurves, width: number, time: number): void {
  const shape = shapeOf(curves, width);
  const { modulation, amplitude, output } = momentOf(curves.rated, time);
  const fm = curves.kind === 'fm';
  const at = {
    swing: { x: shape.x(modulation), y: shape.down(time) },
    slope: { x: shape.x(fm ? modulation : 0), y: shape.y(amplitude) },
    amplitude: { x: shape.across(time), y: shape.y(amplitude) },
    output: { x: shape.across(time), y: shape.outputY(output) },
  };
  for (const [name, { x, y }] of Object.entries(at)) {
    const dot = svg.querySelector(`[data-moment="${name}"]`);
    dot?.setAttribute('cx', x.toFixed(1));
    dot?.setAttribute('cy', y.toFixed(1));
  }
  const joined = [...(fm ? [at.swing] : []), at.slope, at.amplitude, at.output];
  svg.querySelector('[data-moment="guide"]')?.setAttribute('d', lineThrough(joined));
}

function momentWords({ rated, kind }: SlopeCurves, time: number): string {
  const { modulation, amplitude, output } = momentOf(rated, time);
  const where = kind === 'fm' ? `frequency ${formatFigure(modulation, 'Hz', 3)} from the carrier, ` : '';
  return `${where}amplitude ${formatFigure(amplitude, 'V', 3)}, output ${formatFigure(output, 'V', 3)}`;
}

const csvOf = ({ offset, amplitude, builtAmplitude }: SlopeCurves): string => {
  const series = (label: string, a: Float64Array) => ({ label, points: Array.from(a, (y, i) => ({ x: offset[i]!, y })) });
  const all = [series('amplitude across the detector', amplitude), ...(builtAmplitude ? [series('as built', builtAmplitude)] : [])];
  return seriesCsv(all, { label: 'distance from the carrier', unit: 'Hz' }, 'V peak');
};
