import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { StageName } from '#jobs';
import { fieldAt } from '#set-file';
import type { Group } from '#tell';
import type { Workbench } from '../../model/workbench.ts';
import { Editor } from '../form/Editor.tsx';
import { Groups } from '../parts/Groups.tsx';
import type { ViewProps } from '../view-props.ts';

interface Props extends ViewProps {
  readonly stage: StageName;
  /** sections of the set file that are edited here; the one of the step's name where left out */
  readonly sections?: readonly string[];
  /** pictures over the figures, made from the figures themselves where they need them */
  readonly children?: ComponentChildren | ((groups: readonly Group[]) => ComponentChildren);
}

/** A step of the path: what is given on one side, what comes of it on the other, pictures first. */
export function Stage({ desk, editing, stage, sections = [stage], children }: Props) {
  const groups = useStageGroups(desk.bench, stage);
  const fields = sections.flatMap((s) => fieldAt(desk.value.value, [s]) ?? []);
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
        {typeof children === 'function' ? children(groups) : children}
        <Groups groups={groups} />
      </div>
    </div>
  );
}

/** Figures of a step for the picked station; the last that could be worked out. */
export function useStageGroups(bench: Workbench, stage: StageName): readonly Group[] {
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
  return groups;
}
