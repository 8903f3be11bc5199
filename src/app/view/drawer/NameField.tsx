import { useState } from 'preact/hooks';
import type { PartCategory } from '#parts';
import { type DrawerText, renamed } from '../../model/drawer/own-drawer.ts';
import type { Editing } from '../form/editing.tsx';
import { idOf } from '../form/words.ts';

interface Props {
  readonly drawer: DrawerText;
  readonly editing: Editing;
  readonly category: PartCategory;
  readonly name: string;
  readonly onRenamed?: (name: string) => void;
}

/** The name of a part of one's own; one that is taken stays in the field with its complaint, and changes nothing. */
export function NameField({ drawer, editing, category, name, onRenamed }: Props) {
  const [typed, setTyped] = useState(name);
  const id = idOf(['drawer', category, name, 'name']);
  const wanted = typed.trim();
  const complaint =
    wanted === name || renamed(drawer, category, name, wanted) !== null
      ? null
      : wanted === ''
        ? 'A part needs a name.'
        : 'Another part has this name. Give one of its own.';
  const commit = (): void => {
    const all = wanted === name ? null : renamed(drawer, category, name, wanted);
    if (!all) return;
    editing.edit(['drawer', category], all);
    onRenamed?.(wanted);
  };
  return (
    <div class={`cell broad${complaint === null ? '' : ' wrong'}`}>
      <label for={id}>name</label>
      <input
        id={id}
        type="text"
        value={typed}
        maxLength={200}
        aria-invalid={complaint !== null}
        aria-describedby={`${id}-wrong`}
        onInput={(e) => setTyped(e.currentTarget.value)}
        onChange={commit}
      />
      <p class="complaint" id={`${id}-wrong`} aria-live="polite">
        {complaint}
      </p>
    </div>
  );
}
