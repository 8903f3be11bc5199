import { useEffect } from 'preact/hooks';
import { manyHandsOf } from '../../model/tolerance/many-hands.ts';
import type { ViewProps } from '../view-props.ts';
import { Ask } from './Ask.tsx';
import { Dots } from './Dots.tsx';
import { Influences } from './Influences.tsx';
import { Odds } from './Odds.tsx';
import { Progress } from './Progress.tsx';
import { Scatters } from './Scatters.tsx';
import { Trims } from './Trims.tsx';
import './tolerance.css';

/** The set on the bench as it comes from many hands: odds, dots, what matters most and how it is trimmed. */
export function ToleranceView({ desk }: ViewProps) {
  const hands = manyHandsOf(desk);
  useEffect(() => {
    if (hands.run.peek() === null) void hands.start();
  }, [hands]);
  const run = hands.run.value;
  const known = run?.known.value;
  return (
    <div class="view with-form">
      <div class="finds">
        <h2>Built by hand, over and over</h2>
        <p class="about">
          No two coils come out alike, no two parts either. Here your set is built on paper hundreds of times, each time with other small
          errors, and each one is worked out in full.
        </p>
        <Ask hands={hands} />
      </div>
      <div class="finds">
        {run && <Progress hands={hands} run={run} />}
        {run && known && (
          <>
            <Odds known={known} />
            <Dots run={run} known={known} />
            <Influences
              id="dial-moves"
              heading="What moves the dial most, and how to bring it back"
              words={known.dial}
              deviation="moves the dial by"
            />
            <Influences
              id="loudness-changes"
              heading="What changes the loudness most, and what helps"
              words={known.loudness}
              deviation="changes the loudness by"
            />
            <Trims trims={run.plan.value?.trims ?? []} />
            <Scatters rows={known.scatters} />
          </>
        )}
      </div>
    </div>
  );
}
