import { useState } from 'preact/hooks';
import type { Field } from '#set-file';
import { readQuantity } from '#units';
import { Complaints, useEditing } from '../form/editing.tsx';
import { plainOrText } from '../form/Quantity.tsx';
import { asText, idOf } from '../form/words.ts';

interface Props {
  readonly field: Field;
  /** above it */
  readonly label: string;
  /** the whole name, for those who do not see what stands around */
  readonly name: string;
  /** shown where nothing is given */
  readonly usual?: string;
  /** of words, which want more room than numbers */
  readonly broad?: boolean;
}

/** A value in a row of several: its name above it, its complaint below it. */
export function Cell({ field, label, name, usual, broad = false }: Props) {
  const { edit, problemsAt } = useEditing();
  const id = idOf(field.path);
  const standing = asText(field.given);
  // what is typed stays as typed, right or wrong, until something else changes the field
  const [typed, setTyped] = useState<{ readonly text: string; readonly over: string } | null>(null);
  const text = typed?.over === standing ? typed.text : standing;
  const reading = field.kind === 'quantity' && text !== '' ? readQuantity(plainOrText(text, field.dimension), field.dimension) : null;
  const refusal = reading && !reading.ok ? reading : null;
  const wrong = refusal !== null || problemsAt(field.path).length > 0;
  const commit = (value: string): void => {
    if (value === standing) return;
    if (value === '' && !field.required) edit(field.path, undefined);
    else edit(field.path, field.kind === 'quantity' ? plainOrText(value, field.dimension) : value);
  };
  return (
    <div class={`cell${broad ? ' broad' : ''}${wrong ? ' wrong' : ''}`}>
      <label for={id}>
        <span aria-hidden="true">{label}</span>
        <span class="visually-hidden">{name}</span>
      </label>
      <input
        id={id}
        type="text"
        value={text}
        placeholder={usual ?? asText(field.fallback)}
        aria-invalid={wrong}
        aria-describedby={`${id}-wrong`}
        spellcheck={false}
        autocomplete="off"
        onInput={(e) => setTyped({ text: e.currentTarget.value, over: standing })}
        onChange={(e) => commit(e.currentTarget.value.trim())}
      />
      {refusal ? (
        <p class="complaint" id={`${id}-wrong`} aria-live="polite">
          {refusal.why}. {refusal.mend}
        </p>
      ) : (
        <Complaints field={field} id={`${id}-wrong`} />
      )}
    </div>
  );
}
