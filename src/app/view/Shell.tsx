import { useEffect } from 'preact/hooks';
import type { Desk } from '../model/desk.ts';
import type { Listening } from '../model/listening.ts';
import { VIEWS, type View } from '../model/workbench.ts';
import { newVersionReady } from '../offline.ts';
import { DialBench } from './DialBench.tsx';
import type { Editing } from './form/editing.tsx';
import { Head } from './Head.tsx';
import { OpenView } from './OpenView.tsx';
import { fallOf } from './path/fall.ts';
import { looksOf } from './path/looks.ts';
import { Path } from './path/Path.tsx';

/** The whole page: path, verdict and dial, and below them the step that is open. */
export function Shell({ desk, listening }: { readonly desk: Desk; readonly listening: Listening }) {
  const { bench } = desk;
  const shown = bench.shown.value;
  useEffect(() => shortcuts(desk), [desk]);
  useEffect(() => dropped(desk), [desk]);
  const editing: Editing = {
    edit: (path, value, drag) => desk.edit(path, value, drag),
    problemsAt: (path) => desk.problemsAt(path),
  };
  const left = shown?.angle == null ? null : Math.max(...bestBands(shown.ladder));
  const fall = fallOf(
    (shown?.ladder ?? []).map(({ stage, label, value, decibels, costliest }) => ({
      stage,
      label,
      level: value,
      cost: decibels,
      costliest,
    })),
    left === null ? null : left,
  );
  return (
    <>
      <Head desk={desk} />
      <main>
        <Notices desk={desk} />
        <Path
          fall={fall}
          looks={looksOf(desk.value.value, bench.outline.value?.turns ?? null)}
          margin="over what hides it"
          open={bench.view.value}
          onOpen={(stage) => open(desk, stage)}
        />
        <DialBench desk={desk} listening={listening} />
        <div class="views" role="tablist" id="views" aria-label="steps, and what else can be opened">
          {VIEWS.map((v) => (
            <button
              key={v}
              type="button"
              role="tab"
              id={`tab-${v}`}
              aria-selected={bench.view.value === v}
              aria-controls="view"
              onClick={() => open(desk, v)}
            >
              {v}
            </button>
          ))}
        </div>
        <section id="view" role="tabpanel" aria-labelledby={bench.view.value ? `tab-${bench.view.value}` : 'views'}>
          <OpenView desk={desk} editing={editing} listening={listening} />
        </section>
      </main>
    </>
  );
}

const open = (desk: Desk, view: View): void => {
  desk.bench.view.value = view;
};

/** The least of what stands over threshold and over noise: what is left above silence. */
function bestBands(ladder: readonly { readonly name: string; readonly figure: { readonly value: number | null } }[]): readonly number[] {
  const of = (name: string): number | null => ladder.find((r) => r.name === name)?.figure.value ?? null;
  const margins = [of('ladder.overThreshold'), of('ladder.overNoise')].filter((v) => v !== null);
  return [Math.min(...margins)];
}

function Notices({ desk }: { readonly desk: Desk }) {
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

/** Undo and redo as everywhere; a text field keeps its own. */
function shortcuts(desk: Desk): () => void {
  const on = (e: KeyboardEvent): void => {
    if (!(e.ctrlKey || e.metaKey) || e.altKey) return;
    if ((e.target as Element | null)?.matches('input[type="text"], textarea')) return;
    const key = e.key.toLowerCase();
    if (key === 'z' && !e.shiftKey) desk.undo();
    else if (key === 'y' || (key === 'z' && e.shiftKey)) desk.redo();
    else return;
    e.preventDefault();
  };
  addEventListener('keydown', on);
  return () => removeEventListener('keydown', on);
}

/** Files dropped anywhere on the page are opened; without this the browser would show the file and leave the page. */
function dropped(desk: Desk): () => void {
  const over = (e: DragEvent): void => {
    if (e.dataTransfer?.types.includes('Files')) e.preventDefault();
  };
  const drop = (e: DragEvent): void => {
    const files = [...(e.dataTransfer?.files ?? [])];
    if (files.length === 0) return;
    e.preventDefault();
    void desk.openFiles(files);
  };
  addEventListener('dragover', over);
  addEventListener('drop', drop);
  return () => {
    removeEventListener('dragover', over);
    removeEventListener('drop', drop);
  };
}
