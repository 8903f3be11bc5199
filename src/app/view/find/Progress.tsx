import { NOTHING_FOUND } from '#tell';
import type { Finding } from '../../model/find/finding.ts';
import type { Ending, SearchRun } from '../../model/find/search-run.ts';
import { Problems } from '../parts/Problems.tsx';

/** How far a search is, what it has found so far in a sentence, and how to hold or end it. */
export function Progress({ finding, run }: { readonly finding: Finding; readonly run: SearchRun }) {
  const standing = run.standing.value;
  const [spent, allowed] = [run.spent.value, run.allowed.value];
  const answer = run.answer.value;
  const problems = run.problems.value;
  const further = finding.asked.value.seconds;
  return (
    <section class="search" aria-label="the search">
      {problems.length > 0 && (
        <div class="notice bad" role="alert">
          The drawer cannot be searched as it stands:
          <Problems problems={problems.slice(0, 5)} />
        </div>
      )}
      {run.fault.value && (
        <p class="notice bad" role="alert">
          Something failed while searching: {run.fault.value}. What was found so far is kept; start again to go on.
        </p>
      )}
      {finding.outdated.value && (
        <p class="notice">Place or drawer have changed since: what is shown is of how they were. Start anew to search them as they are.</p>
      )}
      <p class="search-line">
        {standing === 'running' && <progress value={Math.min(1, spent / Math.max(1, allowed))} max={1} aria-label="time of the search" />}
        <span>
          {run.trials.value} sets tried, seed {run.asked.seed}, {(spent / 1e3).toFixed(0)} of {(allowed / 1e3).toFixed(0)} s.{' '}
          {standing === 'ended' && endWords(run.ending.value, (answer?.sets.length ?? 0) > 0)}
          {standing === 'held' && 'Held: go on when you like.'}
        </span>
      </p>
      <p class="tools">
        {standing === 'running' && (
          <button type="button" onClick={() => run.hold()}>
            pause
          </button>
        )}
        {standing === 'held' && (
          <button type="button" class="main" onClick={() => void run.goOn()}>
            go on
          </button>
        )}
        {standing !== 'ended' && (
          <button type="button" onClick={() => run.stop()}>
            stop
          </button>
        )}
        {standing === 'ended' && run.ending.value !== 'all' && run.plan.value && (
          <button type="button" onClick={() => void run.goOn(further)}>
            go on for {further} s more
          </button>
        )}
      </p>
      <p class={`verdict ${answer?.sets[0]?.stations[0]?.outcome ?? ''}`} role="status" aria-label="best so far">
        {answer?.sets[0]?.stations[0]?.sentence ??
          (answer && standing === 'ended' ? NOTHING_FOUND : standing === 'running' ? 'Looking…' : '')}
      </p>
      {answer && standing === 'ended' && answer.why.length > 0 && (
        <ul aria-label="why nothing was found">
          {answer.why.map((reason) => (
            <li key={reason}>{reason}</li>
          ))}
        </ul>
      )}
    </section>
  );
}

function endWords(ending: Ending | null, some: boolean): string {
  switch (ending) {
    case 'all':
      return `Every set that can be built and could tune was tried${some ? ': there is no better one' : ''}.`;
    case 'stopped':
      return some ? 'Stopped: this is the best so far.' : 'Stopped.';
    case 'time':
      return some ? 'The time is up: this is the best so far.' : 'The time is up.';
    default:
      return '';
  }
}
