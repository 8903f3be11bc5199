import { useMemo } from 'preact/hooks';
import { drawerOf } from '../../model/drawer/own-drawer.ts';
import { findingOf } from '../../model/find/finding.ts';
import type { SearchRun } from '../../model/find/search-run.ts';
import type { ViewProps } from '../view-props.ts';
import { Ask } from './Ask.tsx';
import { Best, Picked } from './Cards.tsx';
import { Front } from './Front.tsx';
import { Progress } from './Progress.tsx';

/** The best sets that can be built of the drawer, at the place of the document. */
export function FindView({ desk }: ViewProps) {
  const finding = findingOf(desk);
  const [document, files] = [desk.value.value, desk.bench.files.value];
  const drawer = useMemo(() => drawerOf(desk), [desk, document, files]);
  const run = finding.run.value;
  const openDrawer = (): void => {
    desk.bench.view.value = 'drawer';
  };
  return (
    <div class="view with-form">
      <div class="finds">
        <h2>Find the best sets</h2>
        <p class="about">Sets that can be built of the parts in your drawer, worked out in full at this place.</p>
        {drawer ? (
          <Ask finding={finding} />
        ) : (
          <>
            <p>There is no drawer yet to build from. Say first what is in it.</p>
            <p class="tools">
              <button type="button" class="main" onClick={openDrawer}>
                fill the drawer
              </button>
            </p>
          </>
        )}
      </div>
      <div class="finds">
        {run ? (
          <>
            <Progress finding={finding} run={run} />
            <Results desk={desk} run={run} />
          </>
        ) : (
          drawer && <p class="about">Nothing has been searched yet. A few seconds find good sets, a minute finds better ones.</p>
        )}
      </div>
    </div>
  );
}

function Results({ desk, run }: { readonly desk: ViewProps['desk']; readonly run: SearchRun }) {
  const finding = findingOf(desk);
  const answer = run.answer.value;
  if (!answer) return null;
  return (
    <>
      {finding.notice.value && (
        <p class="notice" role="status">
          {finding.notice.value}
        </p>
      )}
      <Best desk={desk} run={run} />
      <Front run={run} />
      <Picked desk={desk} run={run} />
    </>
  );
}
