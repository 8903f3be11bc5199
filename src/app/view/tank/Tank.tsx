import { Sized } from '../parts/Sized.tsx';
import { useCurves } from '../parts/use-curves.ts';
import { Stage } from '../stage/Stage.tsx';
import type { ViewProps } from '../view-props.ts';
import { Coil } from './Coil.tsx';
import { DialScale } from './DialScale.tsx';
import { LossBudget } from './LossBudget.tsx';
import { PerDegree } from './PerDegree.tsx';
import { Response } from './Response.tsx';
import { useTankBuild } from './use-tank-build.ts';

/** The tank: what to wind, what it lets through, where its losses come from, and the dial in front of it. */
export function Tank(props: ViewProps) {
  const { bench } = props.desk;
  const build = useTankBuild(bench);
  const curves = useCurves(bench, 'tankCurves');
  return (
    <Stage {...props} stage="tank">
      {(groups) => (
        <div class="pictures">
          <section aria-labelledby="coil-heading">
            <h2 id="coil-heading">The coil</h2>
            <Sized class="coil">{(width) => build && <Coil tank={build.tank} width={width} />}</Sized>
          </section>
          <section aria-labelledby="response-heading">
            <h2 id="response-heading">What it lets through</h2>
            <Sized>{(width) => curves && <Response curves={curves} station={bench.shown.value?.name ?? ''} width={width} />}</Sized>
          </section>
          <section aria-labelledby="budget-heading">
            <h2 id="budget-heading">Where the losses come from</h2>
            <LossBudget figures={groups.flatMap((g) => g.figures)} />
          </section>
          <section aria-labelledby="dial-heading">
            <h2 id="dial-heading">Its dial</h2>
            <Sized>{(width) => build && <DialScale dial={build.dial} width={width} />}</Sized>
          </section>
          <section aria-labelledby="degree-heading">
            <h2 id="degree-heading">How fast stations run past</h2>
            <Sized>{(width) => curves && <PerDegree curves={curves} width={width} />}</Sized>
          </section>
        </div>
      )}
    </Stage>
  );
}
