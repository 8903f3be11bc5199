import { useState } from 'preact/hooks';
import type { Field } from '#set-file';
import { Complaints, useEditing } from './editing.tsx';
import { idOf, inWords } from './words.ts';

/** Text, or a value of many shapes written as in the file. */
export function Free({ field }: { readonly field: Extract<Field, { kind: 'text' | 'free' }> }) {
  const { edit } = useEditing();
  const id = idOf(field.path);
  const plain = field.kind === 'text';
  const standing = field.given === undefined ? '' : plain ? String(field.given) : JSON.stringify(field.given);
  const [typed, setTyped] = useState<{ readonly text: string; readonly over: string } | null>(null);
  const text = typed?.over === standing ? typed.text : standing;
  const wrong = plain || text === '' ? null : unreadable(text);
  const commit = (): void => {
    if (text === standing || wrong !== null) return;
    if (text === '' && !field.required) edit(field.path, undefined);
    else edit(field.path, plain ? text : JSON.parse(text));
  };
  return (
    <div class={wrong === null ? 'field' : 'field wrong'}>
      <label for={id}>{inWords(field.key)}</label>
      <textarea
        id={id}
        rows={text.length > 60 ? 3 : 1}
        value={text}
        aria-invalid={wrong !== null}
        aria-describedby={`${id}-about ${id}-wrong`}
        placeholder={field.fallback === undefined ? '' : JSON.stringify(field.fallback)}
        spellcheck={plain}
        onInput={(e) => setTyped({ text: e.currentTarget.value, over: standing })}
        onChange={commit}
      />
      <p class="about" id={`${id}-about`}>
        {field.about}
        {plain ? '' : ' (written as in the file)'}
      </p>
      {wrong === null ? (
        <Complaints field={field} id={`${id}-wrong`} />
      ) : (
        <p class="complaint" id={`${id}-wrong`} aria-live="polite">
          This is not JSON: {wrong}. Texts stand in double quotes, lists in brackets.
        </p>
      )}
    </div>
  );
}

function unreadable(text: string): string | null {
  try {
    JSON.parse(text);
    return null;
  } catch (e) {
    return (e as Error).message;
  }
}
