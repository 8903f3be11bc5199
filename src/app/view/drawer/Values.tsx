import { useState } from 'preact/hooks';
import type { Problem } from '#set-file';
import { type DimensionName, readQuantity } from '#units';
import { listOf } from '../../model/drawer/own-drawer.ts';
import { asText } from '../form/words.ts';
import type { CompartmentProps } from './props.ts';

interface Props extends CompartmentProps {
  readonly list: 'resistors' | 'fixedCapacitors';
  readonly heading: string;
  readonly dimension: DimensionName;
  readonly example: string;
  /** of what stands in the list already */
  readonly problems: readonly Problem[];
}

/** Small parts told by their value alone: each once, with how many there are of it. */
export function Values({ drawer, editing, list, heading, dimension, example, problems }: Props) {
  const [typed, setTyped] = useState('');
  const all = listOf(drawer, list);
  const path = ['drawer', list] as const;
  const texts = typed
    .split(/[,;]/)
    .map((t) => t.trim())
    .filter((t) => t !== '');
  const refusal = texts.map((t) => readQuantity(t, dimension)).find((r) => !r.ok);
  const add = (): void => {
    if (refusal || texts.length === 0) return;
    editing.edit(path, [...all, ...texts]);
    setTyped('');
  };
  const less = (value: unknown): void => {
    const at = all.lastIndexOf(value);
    const left = all.filter((_, k) => k !== at);
    editing.edit(path, left.length > 0 ? left : undefined);
  };
  return (
    <section aria-labelledby={`drawer-${list}`}>
      <h3 id={`drawer-${list}`}>{heading}</h3>
      <ul class="chips" aria-label={heading}>
        {[...new Set(all)].map((value) => {
          const count = all.filter((v) => v === value).length;
          const name = asText(value);
          return (
            <li key={name}>
              <button type="button" aria-label={`one ${name} less`} onClick={() => less(value)}>
                -
              </button>
              <span>
                {name}
                {count > 1 ? ` x ${count}` : ''}
              </span>
              <button type="button" aria-label={`one ${name} more`} onClick={() => editing.edit(path, [...all, value])}>
                +
              </button>
            </li>
          );
        })}
      </ul>
      <form
        class="tools"
        onSubmit={(e) => {
          e.preventDefault();
          add();
        }}
      >
        <input
          type="text"
          aria-label={`value to add to ${heading.toLowerCase()}`}
          aria-describedby={`drawer-${list}-wrong`}
          aria-invalid={refusal !== undefined}
          placeholder={example}
          value={typed}
          spellcheck={false}
          autocomplete="off"
          onInput={(e) => setTyped(e.currentTarget.value)}
        />
        <button type="submit" disabled={refusal !== undefined || texts.length === 0}>
          add
        </button>
      </form>
      <p class="complaint" id={`drawer-${list}-wrong`} aria-live="polite">
        {refusal && !refusal.ok ? `${refusal.why}. ${refusal.mend}` : problems.map((p) => `${p.given}: ${p.why}. ${p.mend}`).join(' ')}
      </p>
    </section>
  );
}
