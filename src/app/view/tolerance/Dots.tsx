import { useMemo, useState } from 'preact/hooks';
import { drawDots } from '#draw';
import type { TolerancePlan, ToleranceSlice } from '#jobs';
import { type Along, dotsOfBuilds } from '#tell';
import type { HandRun } from '../../model/tolerance/hand-run.ts';
import { Plot } from '../parts/Plot.tsx';
import { Sized } from '../parts/Sized.tsx';

const ALONG: readonly (readonly [Along, string])[] = [
  ['dial', 'degrees of the dial'],
  ['off', 'frequency off what was meant'],
];

/** Every set that was built as a dot. */
export function Dots({ run, known }: { readonly run: HandRun; readonly known: ToleranceSlice }) {
  const [along, setAlong] = useState<Along>('dial');
  const plan = run.plan.value;
  if (!plan) return null;
  return (
    <section aria-labelledby="dots-heading">
      <h2 id="dots-heading">Every set a dot</h2>
      <p class="about">Further up is louder. Side by side they would stand on one spot if all came out alike.</p>
      <fieldset class="along">
        <legend>across</legend>
        {ALONG.map(([value, words]) => (
          <label key={value} class="check">
            <input type="radio" name="dots-along" checked={along === value} onChange={() => setAlong(value)} />
            {words}
          </label>
        ))}
      </fieldset>
      <Sized>{(width) => <Drawn run={run} plan={plan} known={known} along={along} width={width} />}</Sized>
    </section>
  );
}

interface DrawnProps {
  readonly run: HandRun;
  readonly plan: TolerancePlan;
  readonly known: ToleranceSlice;
  readonly along: Along;
  readonly width: number;
}

function Drawn({ run, plan, known, along, width }: DrawnProps) {
  const built = run.built.value;
  const svg = useMemo(() => {
    const { rotation, meant, name } = plan;
    const dots = dotsOfBuilds({ built, meant, spread: known.spread, headroom: known.headroom, rotation }, along);
    return drawDots(dots, { title: `${name}, built over and over on paper`, width, theme: 'host', id: 'dots-plot' });
  }, [built, plan, known, along, width]);
  return <Plot svg={svg} name={`${plan.name} as built`} />;
}
