import { useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import { drawFront } from '#draw';
import { type FrontDot, frontDots } from '#find';
import { formatFigure } from '#units';
import type { SearchRun } from '../../model/find/search-run.ts';
import { Plot } from '../parts/Plot.tsx';
import { Sized } from '../parts/Sized.tsx';

/** Loudness against distortion against ease of tuning: every dot is a set that can be picked, by pointer or by keyboard. */
export function Front({ run }: { readonly run: SearchRun }) {
  const answer = run.answer.value;
  const dots = useMemo(() => (answer ? frontDots(answer.front, answer.sets) : []), [answer]);
  const [key, setKey] = useState<string | null>(null);
  const at = dots.findIndex((d) => d.key === key);
  if (dots.length === 0) return null;
  const pick = (dot: FrontDot): void => {
    setKey(dot.key);
    void run.pick(dot);
  };
  const current = dots[at];
  return (
    <section aria-labelledby="front-heading">
      <h2 id="front-heading">What can be had of this drawer</h2>
      <p class="about">
        Each dot is a set: those of the list by their numbers, the others such that none is louder, cleaner and easier to tune at once. Pick
        one to see it as a card.
      </p>
      <Sized>{(width) => <Drawn dots={dots} at={at} width={width} onPick={pick} />}</Sized>
      <p class="front-walk">
        <label>
          walk along the dots, from the quietest to the loudest
          <input
            type="range"
            min={0}
            max={dots.length - 1}
            step={1}
            value={Math.max(0, at)}
            aria-valuetext={words(current ?? dots[0]!)}
            onInput={(e) => setKey(dots[Number(e.currentTarget.value)]!.key)}
          />
        </label>
        {current && <span>{words(current)}</span>}
        {current && run.set(current.key) === null && (
          <button type="button" onClick={() => pick(current)}>
            show this set
          </button>
        )}
      </p>
    </section>
  );
}

interface DrawnProps {
  readonly dots: readonly FrontDot[];
  /** the one that is looked at; below 0 for none */
  readonly at: number;
  readonly width: number;
  readonly onPick: (dot: FrontDot) => void;
}

function Drawn({ dots, at, width, onPick }: DrawnProps) {
  const svg = useMemo(
    () => drawFront(dots, { title: 'Loudness, distortion and ease of tuning', width, theme: 'host', id: 'front-plot' }),
    [dots, width],
  );
  const box = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => ring(box.current, at), [svg, at]);
  const click = (e: MouseEvent): void => {
    const index = (e.target as Element).closest<SVGElement>('[data-dot]')?.dataset.dot;
    const dot = index === undefined ? undefined : dots[Number(index)];
    if (dot) onPick(dot);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: a short cut for the mouse; the slider below is the way for everyone
    // biome-ignore lint/a11y/useKeyWithClickEvents: as above
    <div ref={box} class="front" onClick={click}>
      <Plot svg={svg} name="What can be had" />
    </div>
  );
}

/** A ring round the dot that is looked at. */
function ring(box: HTMLElement | null, at: number): void {
  box?.querySelector('[data-cursor]')?.remove();
  const dot = box?.querySelector<SVGCircleElement>(`[data-dot="${at}"]`);
  if (!dot) return;
  const around = document.createElementNS('http://www.w3.org/2000/svg', 'circle');
  const radius = dot.r.baseVal.value + 1.2;
  for (const [name, value] of Object.entries({ cx: dot.cx.baseVal.value, cy: dot.cy.baseVal.value, r: radius, class: 'front-ring' }))
    around.setAttribute(name, String(value));
  around.dataset.cursor = '';
  dot.parentElement!.append(around);
}

const words = (d: FrontDot): string =>
  [
    d.rank === null ? '' : `number ${d.rank} of the list: `,
    `${d.headroom.toFixed(1)} dB over what the ear needs, `,
    `distortion ${(-d.distortion).toFixed(0)} dB below the programme, `,
    `the dial runs by ${formatFigure(d.hertzPerDegree, 'Hz', 2)} a degree`,
  ].join('');
