import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Field, Problem } from '#set-file';

/** What every field of a form needs of the page around it. */
export interface Editing {
  /** puts a value at a path, or takes it out where it is undefined; edits with the same `drag` become one step of undo */
  readonly edit: (path: Field['path'], value: unknown, drag?: string) => void;
  readonly problemsAt: (path: Field['path']) => readonly Problem[];
}

export const EditingContext = createContext<Editing | null>(null);

export function useEditing(): Editing {
  const editing = useContext(EditingContext);
  if (!editing) throw new Error('a field stands outside a form');
  return editing;
}

/** What is wrong with a field, beside it. */
export function Complaints({ field, id }: { readonly field: Field; readonly id: string }) {
  const problems = useEditing().problemsAt(field.path);
  return (
    <p class="complaint" id={id} aria-live="polite">
      {problems.map((p) => `${p.why}. ${p.mend}`).join(' ')}
    </p>
  );
}
