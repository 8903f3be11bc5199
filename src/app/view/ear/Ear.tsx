import { Sized } from '../parts/Sized.tsx';
import { useCurves } from '../parts/use-curves.ts';
import { Stage } from '../stage/Stage.tsx';
import type { ViewProps } from '../view-props.ts';
import { AtTheEar } from './AtTheEar.tsx';
import { Intelligibility } from './Intelligibility.tsx';

/** The ear: what reaches it, what it must rise above, and how much of speech is understood. */
export function Ear(props: ViewProps) {
  const { bench } = props.desk;
  const curves = useCurves(bench, 'earCurves');
  const name = bench.shown.value?.name ?? '';
  return (
    <Stage {...props} stage="ear" sections={['ear', 'programme']}>
      {curves === null && <p class="about">The dial does not reach this station, so nothing of it comes to the ear.</p>}
      {curves && (
        <div class="pictures">
          <section aria-labelledby="heard-heading" class="broad">
            <h2 id="heard-heading">What reaches the ear</h2>
            <Sized>{(width) => <AtTheEar curves={curves} station={name} width={width} />}</Sized>
          </section>
          <section aria-labelledby="understood-heading" class="broad">
            <h2 id="understood-heading">How much of speech is understood</h2>
            <Sized>{(width) => <Intelligibility curves={curves} width={width} />}</Sized>
          </section>
        </div>
      )}
    </Stage>
  );
}
