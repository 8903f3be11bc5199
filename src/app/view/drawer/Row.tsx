import type { ComponentChildren } from 'preact';
import type { Field } from '#set-file';
import { type Editing, EditingContext } from '../form/editing.tsx';
import { Cell } from './Cell.tsx';

interface RowProps {
  readonly editing: Editing;
  /** what the row is of: `drill bit, 8 mm` */
  readonly what: string;
  readonly onTakeOut: () => void;
  readonly children: ComponentChildren;
}

/** One thing of a list in the drawer: its values side by side as far as there is room. */
export function Row({ editing, what, onTakeOut, children }: RowProps) {
  return (
    <EditingContext.Provider value={editing}>
      <li class="stock-row">
        {children}
        <button type="button" aria-label={`take out ${what}`} onClick={onTakeOut}>
          take out
        </button>
      </li>
    </EditingContext.Provider>
  );
}

interface CellsProps {
  readonly field: Field;
  /** keys with what is said above each, and what is shown where nothing is given */
  readonly cells: readonly (readonly [key: string, label: string, usual?: string])[];
  readonly what: string;
}

/** Cells of a group, in the order in which they are named. */
export function Cells({ field, cells, what }: CellsProps) {
  if (field.kind !== 'group') return null;
  return (
    <>
      {cells.map(([key, label, usual]) => {
        const inside = field.fields.find((f) => f.key === key);
        return (
          inside && (
            <Cell
              key={key}
              field={inside}
              label={label}
              name={`${label}, ${what}`}
              broad={key === 'title'}
              {...(usual !== undefined && { usual })}
            />
          )
        );
      })}
    </>
  );
}
