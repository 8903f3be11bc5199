import { useMemo, useState } from 'preact/hooks';
import { type Field, fieldAt, showPath } from '#set-file';
import { type OpenedDrawer, takeDemo, takePartsOfSet } from '../../model/drawer/drawer-file.ts';
import { drawerFileOf, drawerOf, editDrawer, problemsBelow, summaryOf } from '../../model/drawer/own-drawer.ts';
import type { Editing } from '../form/editing.tsx';
import type { ViewProps } from '../view-props.ts';
import { OpenDrawer, SaveDrawer } from './Exchange.tsx';
import { Parts } from './Parts.tsx';
import { Chokes, Formers, Garden, Rods } from './Stock.tsx';
import { Values } from './Values.tsx';
import { Wires } from './Wires.tsx';

/** What is in the drawer: what a search builds sets of. */
export function DrawerView({ desk, editing }: ViewProps) {
  const [document, files] = [desk.value.value, desk.bench.files.value];
  const drawer = useMemo(() => drawerOf(desk), [desk, document, files]);
  const [complaint, setComplaint] = useState<string | null>(null);
  const told = (opened: OpenedDrawer): void => setComplaint(opened.ok ? null : opened.why);
  const own: Editing = {
    ...editing,
    edit: (path, value, drag) => editDrawer(desk, path, value, drag),
    problemsAt: (path) => desk.bench.problems.value.filter((p) => p.path === showPath(path)),
  };
  const file = drawerFileOf(document);
  if (!drawer)
    return (
      <div class="view">
        <section aria-labelledby="drawer-heading">
          <h2 id="drawer-heading">What is in your drawer?</h2>
          <p>
            Say which parts you have, and Earshot looks for the best sets that can be built of them, at this place. Nothing is bought that
            is not there.
          </p>
          {file !== null && (
            <p class="complaint">The drawer of this set is in the file {file}, which is not at hand. Open it, or begin anew.</p>
          )}
          <p class="tools">
            <button type="button" class="main" onClick={() => void takePartsOfSet(desk).then(told)}>
              take the parts of this set
            </button>
            <button type="button" onClick={() => void takeDemo(desk).then(told)}>
              take the demo drawer (invented)
            </button>
            <button type="button" onClick={() => desk.edit(['drawer'], {})}>
              start empty
            </button>
            <OpenDrawer desk={desk} onOpened={told} />
          </p>
          <p class="complaint" aria-live="polite">
            {complaint}
          </p>
        </section>
      </div>
    );
  const given = { drawer, editing: own, fieldAt: (path: Field['path']) => fieldAt({ drawer }, path) };
  return (
    <div class="view">
      <div>
        <h2>What is in your drawer</h2>
        <p class="drawer-summary" role="status" aria-label="what the drawer holds">
          {summaryOf(drawer)}
        </p>
        {file !== null && (
          <p class="about">
            This drawer is in the file {file}, which is left as it is: with your first change here the drawer is written into this set.
          </p>
        )}
        <p class="tools">
          <button
            type="button"
            class="main"
            onClick={() => {
              desk.bench.view.value = 'find';
            }}
          >
            find sets of these parts
          </button>
          <SaveDrawer desk={desk} />
          <OpenDrawer desk={desk} onOpened={told} />
        </p>
        <p class="complaint" aria-live="polite">
          {complaint}
        </p>
      </div>
      <div class="pictures drawer">
        <div>
          <Wires {...given} />
          <Formers {...given} />
          <Rods {...given} />
          <Values
            {...given}
            list="fixedCapacitors"
            heading="Fixed capacitors"
            dimension="capacitance"
            example="2.2 pF, 220 pF"
            problems={problemsBelow(desk, ['drawer', 'fixedCapacitors'])}
          />
          <Values
            {...given}
            list="resistors"
            heading="Resistors"
            dimension="resistance"
            example="100 k, 1 M"
            problems={problemsBelow(desk, ['drawer', 'resistors'])}
          />
          <Chokes {...given} />
          <Garden {...given} />
        </div>
        <div>
          <Parts {...given} category="capacitors" heading="Variable capacitors" one="a capacitor" />
          <Parts {...given} category="detectors" heading="Detectors" one="a detector" />
          <Parts {...given} category="earpieces" heading="Earpieces" one="an earpiece" />
          <Parts {...given} category="transformers" heading="Transformers" one="a transformer" />
        </div>
      </div>
    </div>
  );
}
