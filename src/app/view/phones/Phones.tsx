import { AtTheEar } from '../ear/AtTheEar.tsx';
import { Sized } from '../parts/Sized.tsx';
import { useCurves } from '../parts/use-curves.ts';
import { useSteady } from '../parts/use-steady.ts';
import { Stage } from '../stage/Stage.tsx';
import type { ViewProps } from '../view-props.ts';
import { Load } from './Load.tsx';
import { Sensitivity } from './Sensitivity.tsx';

/** The phones: what sound they make of a voltage, how they load the detector, and what comes of the picked station. */
export function Phones(props: ViewProps) {
  const { bench } = props.desk;
  const curves = useSteady(bench, 'phonesCurves');
  const sound = useCurves(bench, 'earCurves');
  return (
    <Stage {...props} stage="phones">
      <div class="pictures">
        <section aria-labelledby="sensitivity-heading">
          <h2 id="sensitivity-heading">Loud for a volt</h2>
          <Sized>{(width) => curves && <Sensitivity curves={curves} width={width} />}</Sized>
        </section>
        <section aria-labelledby="load-heading">
          <h2 id="load-heading">What the detector has to drive</h2>
          <Sized>{(width) => curves && <Load curves={curves} width={width} />}</Sized>
        </section>
        <section aria-labelledby="sound-heading" class="broad">
          <h2 id="sound-heading">What comes out</h2>
          {sound === null && <p class="about">The dial does not reach this station.</p>}
          <Sized>{(width) => sound && <AtTheEar curves={sound} station={bench.shown.value?.name ?? ''} width={width} />}</Sized>
        </section>
      </div>
    </Stage>
  );
}
