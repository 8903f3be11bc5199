import { useRef, useState } from 'preact/hooks';
import type { AxisOptions, Series } from '#draw';
import { formatFigure } from '#units';
import { seriesCsv } from './csv.ts';
import { asFile, saveFile, savePng } from './save.ts';

/** Curves behind a drawing, so that they can be read point by point and saved as a table. */
export interface Curves {
  readonly series: readonly Series[];
  readonly x: AxisOptions;
  readonly y: AxisOptions;
}

interface Props {
  /** the drawing, as made by the drawings' own functions */
  readonly svg: string;
  readonly name: string;
  readonly curves?: Curves;
}

/** A drawing that can be saved, and read by keyboard where curves are behind it. */
export function Plot({ svg, name, curves }: Props) {
  const frame = useRef<HTMLDivElement>(null);
  const [at, setAt] = useState<Cursor>({ series: 0, point: 0 });
  const [reading, setReading] = useState('');
  const drawing = (): SVGSVGElement => frame.current!.querySelector('svg')!;
  const file = name.toLowerCase().replaceAll(/[^\p{L}\p{N}]+/gu, '-');
  const move = (e: KeyboardEvent): void => {
    if (!curves || curves.series.length === 0) return;
    const next = moved(at, e.key, curves.series);
    if (!next) return;
    e.preventDefault();
    setAt(next);
    setReading(told(curves, next));
    mark(drawing(), curves.series, next);
  };
  return (
    <figure class="plot">
      {curves ? (
        <div
          ref={frame}
          class="scroll"
          role="slider"
          aria-roledescription="plot"
          aria-label={`${name}: arrow keys read it point by point`}
          aria-valuemin={0}
          aria-valuemax={(curves.series[at.series]?.points.length ?? 1) - 1}
          aria-valuenow={at.point}
          aria-valuetext={reading || descriptionIn(svg)}
          tabIndex={0}
          onKeyDown={move}
          // the text is from our own drawing functions, which escape what they are given
          dangerouslySetInnerHTML={{ __html: svg }}
        />
      ) : (
        <div ref={frame} class="scroll" dangerouslySetInnerHTML={{ __html: svg }} />
      )}
      <figcaption>
        <span class="reading-line" aria-live="polite">
          {reading}
        </span>
        <button type="button" onClick={() => saveFile(`${file}.svg`, asFile(drawing()), 'image/svg+xml')}>
          SVG
        </button>
        <button type="button" onClick={() => void savePng(`${file}.png`, drawing())}>
          PNG
        </button>
        {curves && (
          <button type="button" onClick={() => saveFile(`${file}.csv`, seriesCsv(curves.series, curves.x, curves.y.unit), 'text/csv')}>
            CSV
          </button>
        )}
      </figcaption>
    </figure>
  );
}

/** What the drawing says of itself to those who do not see it. */
const descriptionIn = (svg: string): string => /<desc[^>]*>([^<]*)<\/desc>/.exec(svg)?.[1] ?? '';

interface Cursor {
  readonly series: number;
  readonly point: number;
}

function moved({ series, point }: Cursor, key: string, all: readonly Series[]): Cursor | null {
  const last = (k: number): number => all[k]!.points.length - 1;
  const big = Math.max(1, Math.round(last(series) / 20));
  const along = {
    ArrowLeft: -1,
    ArrowRight: 1,
    PageDown: -big,
    PageUp: big,
    Home: Number.NEGATIVE_INFINITY,
    End: Number.POSITIVE_INFINITY,
  }[key];
  if (along !== undefined) return { series, point: Math.min(last(series), Math.max(0, point + along)) };
  const across = { ArrowUp: -1, ArrowDown: 1 }[key];
  if (across === undefined) return null;
  const to = (series + across + all.length) % all.length;
  // the nearest point of the other curve
  const x = all[series]!.points[point]?.x ?? 0;
  const near = all[to]!.points.reduce((best, p, k) => (Math.abs(p.x - x) < Math.abs(all[to]!.points[best]!.x - x) ? k : best), 0);
  return { series: to, point: near };
}

function told({ series, x, y }: Curves, at: Cursor): string {
  const p = series[at.series]?.points[at.point];
  if (!p) return '';
  const value = (v: number | null, axis: AxisOptions): string => (v === null ? 'no value' : formatFigure(v, axis.unit ?? '1', 4));
  return `${series[at.series]!.label}: ${value(p.y, y)} at ${x.label} ${value(p.x, x)}`;
}

/** A ring on the point that is read, where the drawing has one corner for every point. */
function mark(svg: SVGSVGElement, series: readonly Series[], at: Cursor): void {
  svg.querySelector('[data-cursor]')?.remove();
  const lines = [...svg.querySelectorAll<SVGPolylineElement>(`polyline[data-series="${at.series}"][data-part="line"]`)];
  const corners = lines.flatMap((l) => [...l.points]);
  const drawn = series[at.series]!.points.filter((p) => p.y !== null);
  const corner = corners[drawn.indexOf(series[at.series]!.points[at.point]!)];
  if (corners.length !== drawn.length || !corner) return;
  const ring = document.createElementNS('http://www.w3.org/2000/svg', 'circle');
  for (const [key, value] of Object.entries({ cx: corner.x, cy: corner.y, r: 2, class: 's-accent', fill: 'none', 'stroke-width': 0.6 }))
    ring.setAttribute(key, String(value));
  ring.dataset.cursor = '';
  lines[0]!.parentElement!.append(ring);
}
