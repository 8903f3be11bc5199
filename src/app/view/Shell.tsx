import { useEffect } from 'preact/hooks';
import type { Desk } from '../model/desk.ts';
import type { Listening } from '../model/listening.ts';
import type { View } from '../model/workbench.ts';
import { DialBench } from './DialBench.tsx';
import type { Editing } from './form/editing.tsx';
import { Head } from './Head.tsx';
import { Notices } from './Notices.tsx';
import { OpenView } from './OpenView.tsx';
import { fallOf } from './path/fall.ts';
import { looksOf } from './path/looks.ts';
import { Path } from './path/Path.tsx';
import { Tabs } from './Tabs.tsx';

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
  const fall = fallOf(
    (shown?.ladder ?? []).map(({ stage, label, value, decibels, costliest }) => ({
      stage,
      label,
      level: value,
      cost: decibels,
      costliest,
    })),
    shown?.headroom ?? null,
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
        <Tabs open={bench.view.value} onOpen={(view) => open(desk, view)} />
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
