import { useEffect, useMemo, useState } from 'preact/hooks';
import type { WhatIf } from '#jobs';
import { Sized } from '../parts/Sized.tsx';
import { useCurves } from '../parts/use-curves.ts';
import { useWidth } from '../parts/use-width.ts';
import type { ViewProps } from '../view-props.ts';
import { Around } from './Around.tsx';
import { Controls } from './Controls.tsx';
import { Picture } from './Picture.tsx';
import { trialOf } from './trial.ts';
import { slopeSentence, triedSentence } from './words.ts';

/** Narrower, the numbers of the picture would run into each other; wider, it would not be taken in at a glance [px]. */
const NARROWEST = 320;
const WIDEST = 1100;

/** How frequency becomes amplitude on the slope of the tank, which is how a set without a battery hears FM. */
export function Slope({ desk: { bench } }: ViewProps) {
  const [box, width] = useWidth<HTMLDivElement>();
  const [whatIf, setWhatIf] = useState<WhatIf | undefined>(undefined);
  const curves = useCurves(
    bench,
    'slopeCurves',
    useMemo(() => ({ whatIf }), [whatIf]),
  );
  const station = bench.station.value;
  // what is supposed is of one station
  useEffect(() => setWhatIf(undefined), [station]);
  if (curves === null)
    return <p>The dial does not reach this station, so that there is no slope to swing on. See what would help, above.</p>;
  const trial = curves && trialOf(bench, curves, whatIf, setWhatIf);
  const tried = curves && triedSentence(curves);
  return (
    <div class="view slope">
      <div ref={box}>
        <h2>The slope</h2>
        {curves && trial && width > 0 && (
          <>
            <Picture curves={curves} trial={trial} sentence={slopeSentence(curves)} width={Math.min(WIDEST, Math.max(NARROWEST, width))} />
            <p class="about">
              The dark line is the slope with the detector's output held still. The copper one is where the tone goes, while the output
              moves along.
            </p>
            <p class="slope-tried" aria-live="polite">
              {tried}
            </p>
          </>
        )}
      </div>
      {curves && trial && (
        <>
          <section aria-labelledby="try-heading">
            <h2 id="try-heading">Try it</h2>
            <Controls curves={curves} trial={trial} />
          </section>
          <div class="pictures slope-around">
            <Sized>{(sheet) => <Around curves={curves} width={sheet} what="level" />}</Sized>
            <Sized>{(sheet) => <Around curves={curves} width={sheet} what="harmonics" />}</Sized>
          </div>
        </>
      )}
    </div>
  );
}
