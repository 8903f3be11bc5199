import type { PartCategory } from '#parts';
import { type DrawerText, without } from '../../model/drawer/own-drawer.ts';
import { partField } from '../../model/drawer/part-field.ts';
import { Editor } from '../form/Editor.tsx';
import type { Editing } from '../form/editing.tsx';
import { NameField } from './NameField.tsx';

interface Props {
  readonly drawer: DrawerText;
  readonly editing: Editing;
  readonly category: PartCategory;
  readonly name: string;
  /** what it is */
  readonly words: string;
  readonly values: unknown;
  readonly open: boolean;
  readonly onRenamed: (name: string) => void;
}

/** A part of one's own, folded under its name. */
export function OwnPart({ drawer, editing, category, name, words, values, open, onRenamed }: Props) {
  const field = partField(category, name, values);
  return (
    <details class="own-part" open={open}>
      <summary>
        {name} <small>{words}</small>
      </summary>
      <div class="own-values">
        <NameField drawer={drawer} editing={editing} category={category} name={name} onRenamed={onRenamed} />
        {field && <Editor field={field} editing={editing} />}
        <p class="tools">
          <button type="button" onClick={() => editing.edit(['drawer', category], without(drawer, category, name))}>
            take out {name}
          </button>
        </p>
      </div>
    </details>
  );
}
