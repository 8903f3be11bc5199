import { useEffect } from 'preact/hooks';
import type { ViewProps } from '../view-props.ts';
import { SideBySide } from './SideBySide.tsx';
import { SweepPlot } from './SweepPlot.tsx';

/** Sets side by side, and one number of the set on the bench over a range. */
export function CompareView({ desk, editing, listening }: ViewProps) {
  const { shelf } = desk;
  const sets = shelf.sets.value;
  useEffect(() => void shelf.work(), [shelf, sets]);
  return (
    <div class="view">
      <div>
        <h2>sets side by side</h2>
        <p class="about">
          Put the set aside, change it, and see here what the change did. Any number of sets can be put aside; they stay on this machine.
        </p>
        <div class="tools">
          <button type="button" class="main" onClick={() => void shelf.put(desk.name.value, desk.work())}>
            put this set aside
          </button>
        </div>
        {shelf.notice.value && <p class="complaint">{shelf.notice.value}</p>}
        <SideBySide {...{ desk, editing, listening }} />
      </div>
      <div>
        <h2>one number over a range</h2>
        <SweepPlot desk={desk} />
      </div>
    </div>
  );
}
