import { Sized } from '../parts/Sized.tsx';
import { useCurves } from '../parts/use-curves.ts';
import { Stage } from '../stage/Stage.tsx';
import type { ViewProps } from '../view-props.ts';
import { Law } from './Law.tsx';
import { Transfer } from './Transfer.tsx';
import { workingSentence } from './words.ts';

/** The detector: its law with the swing of the station on it, and what comes out for what goes in. */
export function Detector(props: ViewProps) {
  const curves = useCurves(props.desk.bench, 'detectorCurves');
  return (
    <Stage {...props} stage="detector">
      <div class="pictures">
        <section aria-labelledby="law-heading">
          <h2 id="law-heading">What it lets through</h2>
          <Sized>{(width) => curves && <Law curves={curves} width={width} />}</Sized>
        </section>
        <section aria-labelledby="transfer-heading">
          <h2 id="transfer-heading">What comes out</h2>
          <Sized>{(width) => curves && <Transfer curves={curves} width={width} />}</Sized>
          <p class="about" aria-live="polite">
            {curves && workingSentence(curves)}
          </p>
        </section>
      </div>
    </Stage>
  );
}
