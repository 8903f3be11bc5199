import type { AerialCurves } from '#jobs';
import { Sized } from '../parts/Sized.tsx';
import { useSteady } from '../parts/use-steady.ts';
import { Stage } from '../stage/Stage.tsx';
import type { ViewProps } from '../view-props.ts';
import { Impedance } from './Impedance.tsx';
import { InSpace } from './InSpace.tsx';
import { Patterns } from './Patterns.tsx';
import { ToScale } from './ToScale.tsx';

/** The aerial: its wires in space, what it hears from where, what the set sees at its terminals, and what to cut. */
export function Aerial(props: ViewProps) {
  const { bench } = props.desk;
  const curves = useSteady(bench, 'aerialCurves');
  return (
    <Stage {...props} stage="aerial">
      {curves && <Pictures curves={curves} station={bench.station.value} />}
      {curves === null && (
        <p class="about">In this set the tuning coil is the aerial itself: how it is wound and how it lies is seen with the tank.</p>
      )}
    </Stage>
  );
}

function Pictures({ curves, station }: { readonly curves: AerialCurves; readonly station: number }) {
  return (
    <div class="pictures">
      <div>
        <section aria-labelledby="space-heading">
          <h2 id="space-heading">In space</h2>
          <Sized>{(width) => <InSpace curves={curves} station={station} width={width} />}</Sized>
        </section>
        <section aria-labelledby="impedance-heading">
          <h2 id="impedance-heading">What the set sees of it</h2>
          <Sized>{(width) => <Impedance curves={curves} width={width} />}</Sized>
        </section>
        {curves.wires && (
          <section aria-labelledby="cut-heading">
            <h2 id="cut-heading">To build it</h2>
            <ToScale description={curves.wires.description} />
          </section>
        )}
      </div>
      <section aria-labelledby="pattern-heading">
        <h2 id="pattern-heading">What it hears from where</h2>
        <Sized>{(width) => <Patterns curves={curves} station={station} width={width} />}</Sized>
      </section>
    </div>
  );
}
