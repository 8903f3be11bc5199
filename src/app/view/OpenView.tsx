import { useEffect, useState } from 'preact/hooks';
import type { StageName } from '#jobs';
import type { Group } from '#tell';
import type { Desk } from '../model/desk.ts';
import type { Listening } from '../model/listening.ts';
import type { View } from '../model/workbench.ts';
import { Editor } from './form/Editor.tsx';
import type { Editing } from './form/editing.tsx';
import { Groups } from './parts/Groups.tsx';

/** Sections of the set file that a view edits. */
const SECTIONS: Readonly<Partial<Record<View, readonly string[]>>> = {
  place: ['place'],
  aerial: ['aerial'],
  tank: ['tank'],
  detector: ['detector'],
  phones: ['phones'],
  ear: ['ear', 'programme'],
};

/** The step that is open: its inputs on one side, what comes of them on the other. */
export function OpenView({ desk, editing, listening }: { readonly desk: Desk; readonly editing: Editing; readonly listening: Listening }) {
  const view = desk.bench.view.value;
  const sections = SECTIONS[view];
  if (!sections) return <p>{listening.sound.live.value.kind}</p>;
  const fields = sections.flatMap((s) => desk.fieldAt([s]) ?? []);
  return (
    <div class="view with-form">
      <div>
        {fields.map((f) => (
          <section key={f.key} aria-label={f.key}>
            <h2>{f.key}</h2>
            <Editor field={f} editing={editing} />
          </section>
        ))}
      </div>
      <div>
        <StageFigures desk={desk} stage={view as StageName} />
      </div>
    </div>
  );
}

function StageFigures({ desk, stage }: { readonly desk: Desk; readonly stage: StageName }) {
  const { bench } = desk;
  const [groups, setGroups] = useState<readonly Group[]>([]);
  const [document, station] = [bench.document.value, bench.station.value];
  useEffect(() => {
    let wanted = true;
    void bench.ask('figures', 'stage', { document, stage, station }).then((answer) => {
      if (wanted && answer?.ok) setGroups(answer.value);
    });
    return () => {
      wanted = false;
    };
  }, [bench, document, stage, station]);
  return <Groups groups={groups} />;
}
