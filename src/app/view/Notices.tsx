import type { Desk } from '../model/desk.ts';
import { newVersionReady } from '../offline.ts';

/** What the person should know just now: faults of the set, how the work is kept, what is being worked out, cautions. */
export function Notices({ desk }: { readonly desk: Desk }) {
  const { problems, fault, working, result } = desk.bench;
  return (
    <div aria-live="polite">
      {newVersionReady.value && <p class="notice">A new version is ready. Load the page again to use it.</p>}
      {desk.notice.value && (
        <p class="notice">
          {desk.notice.value}{' '}
          <button
            type="button"
            onClick={() => {
              desk.notice.value = null;
            }}
          >
            good
          </button>
        </p>
      )}
      {desk.keepingNotice.value && (
        <div class="notice" role="alert">
          {desk.keepingNotice.value}{' '}
          {desk.keeping.value?.kind === 'conflict' && (
            <>
              <button type="button" onClick={() => void desk.takeTheirs()}>
                take that one
              </button>{' '}
              <button type="button" onClick={() => void desk.keepMine()}>
                keep mine
              </button>
            </>
          )}
        </div>
      )}
      {problems.value.length > 0 && (
        <div class="notice bad" role="alert">
          {problems.value.length === 1 ? 'One thing' : `${problems.value.length} things`} in the set cannot be; what is shown is the last
          that could be worked out.
          <ul>
            {problems.value.slice(0, 5).map((p) => (
              <li key={`${p.path} ${p.why}`}>
                {p.path || 'the file'}
                {p.given ? ` is ${p.given}` : ''}: {p.why}. {p.mend}
              </li>
            ))}
          </ul>
        </div>
      )}
      {fault.value && (
        <p class="notice bad" role="alert">
          Something failed while working this out: {fault.value}. The set is safe; change anything to try again.
        </p>
      )}
      {working.value && (
        <p class="notice">
          working out {working.value.what} <progress value={working.value.done} max={1} aria-label={`working out ${working.value.what}`} />
        </p>
      )}
      {result.value?.cautions.map((c) => (
        <details key={c} class="notice caution">
          <summary>Caution: {c.split(/[:,]/)[0]}</summary>
          {c}
        </details>
      ))}
    </div>
  );
}
