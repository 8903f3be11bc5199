import type { HandRun } from '../../model/tolerance/hand-run.ts';
import type { ManyHands } from '../../model/tolerance/many-hands.ts';
import { Problems } from '../parts/Problems.tsx';

/** How many sets are built, and how to stop or go on. */
export function Progress({ hands, run }: { readonly hands: ManyHands; readonly run: HandRun }) {
  const running = run.running.value;
  const plan = run.plan.value;
  const [built, wanted] = [run.built.value.length, run.wanted.value];
  const problems = run.problems.value;
  return (
    <section class="search" aria-label="the building">
      {problems.length > 0 && (
        <div class="notice bad" role="alert">
          The set cannot be built as it stands:
          <Problems problems={problems.slice(0, 5)} />
        </div>
      )}
      {run.fault.value && (
        <p class="notice bad" role="alert">
          Something failed while building: {run.fault.value}. What was built so far is kept; start anew to try again.
        </p>
      )}
      {hands.outdated.value && (
        <p class="notice">The set or its place has changed since: what is shown is of how it was. Start anew to build it as it is now.</p>
      )}
      {plan && plan.meant.place === null && (
        <p class="notice">
          Even without any error the set does not reach {plan.name} on its dial: only some lucky errors would bring it there. The tank needs
          changing first; "what would help" says how.
        </p>
      )}
      {problems.length === 0 && (
        <>
          <p class="search-line" role="status" aria-live={running ? 'off' : 'polite'} aria-label="sets built">
            {running && <progress value={built} max={wanted} aria-label="sets built of those wanted" />}
            <span>
              {plan ? `${plan.name}: ` : ''}
              {built} {built === 1 ? 'set' : 'sets'} built on paper, seed {run.seed}
              {running ? `, of ${wanted}` : built < wanted ? '. Stopped.' : '.'}
            </span>
          </p>
          <p class="tools">
            {running ? (
              <button type="button" onClick={() => run.stop()}>
                stop
              </button>
            ) : (
              run.further > 0 && (
                <button type="button" onClick={() => void run.more()}>
                  build {run.further} more
                </button>
              )
            )}
          </p>
        </>
      )}
    </section>
  );
}
