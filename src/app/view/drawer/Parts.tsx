import { useState } from 'preact/hooks';
import { LIBRARY, type PartCategory } from '#parts';
import { NEW_PARTS } from '../../model/drawer/new-parts.ts';
import { entriesOf, freeName, fromLibrary, isObject, ticked } from '../../model/drawer/own-drawer.ts';
import { partWords } from '../../model/drawer/part-words.ts';
import { OwnPart } from './OwnPart.tsx';
import type { CompartmentProps } from './props.ts';

interface Props extends CompartmentProps {
  readonly category: Exclude<PartCategory, 'wires'>;
  readonly heading: string;
  readonly one: string;
}

/** Parts of one kind: the library's to tick, and those of one's own. */
export function Parts({ drawer, editing, category, heading, one }: Props) {
  const [opened, setOpened] = useState<string | null>(null);
  const held = new Set(fromLibrary(drawer, category));
  const own = entriesOf(drawer, category);
  const tick = (name: string, into: boolean): void => editing.edit(['drawer', 'fromLibrary'], ticked(drawer, name, into));
  const add = (): void => {
    const { name, part } = NEW_PARTS[category];
    const free = freeName(drawer, category, name);
    editing.edit(['drawer', category, free], part);
    setOpened(free);
  };
  return (
    <section aria-labelledby={`drawer-${category}`}>
      <h3 id={`drawer-${category}`}>{heading}</h3>
      <ul class="ticks" aria-label={`${heading} of the library`}>
        {Object.entries(LIBRARY[category]).map(([name, part]) => (
          <li key={name}>
            <label class="check">
              <input type="checkbox" checked={held.has(name)} onChange={(e) => tick(name, e.currentTarget.checked)} />
              <span>
                {part.title ?? name} <small>{partWords(category, part.values)}</small>
              </span>
            </label>
          </li>
        ))}
      </ul>
      {own.map(([name, part]) => (
        <OwnPart
          key={name}
          drawer={drawer}
          editing={editing}
          category={category}
          name={name}
          words={isObject(part) ? partWords(category, part.values) : ''}
          values={isObject(part) ? part.values : undefined}
          open={opened === name}
          onRenamed={setOpened}
        />
      ))}
      <p class="tools">
        <button type="button" onClick={add}>
          add {one} of your own
        </button>
      </p>
    </section>
  );
}
