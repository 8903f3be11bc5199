import type { Field } from '#set-file';
import { Complaints, useEditing } from './editing.tsx';
import { idOf, inWords } from './words.ts';

/** One of a few words, or yes and no. */
export function Choice({ field }: { readonly field: Extract<Field, { kind: 'words' | 'flag' }> }) {
  const { edit } = useEditing();
  const id = idOf(field.path);
  const words: readonly (string | number | boolean)[] = field.kind === 'flag' ? [true, false] : field.words;
  const name = (w: string | number | boolean): string => (w === true ? 'yes' : w === false ? 'no' : String(w));
  const usual = field.fallback === undefined ? 'as usual' : `as usual: ${String(field.fallback)}`;
  return (
    <div class="field">
      <label for={id}>{inWords(field.key)}</label>
      <select
        id={id}
        aria-describedby={`${id}-about ${id}-wrong`}
        value={field.given === undefined ? '' : String(field.given)}
        onChange={(e) =>
          edit(
            field.path,
            words.find((w) => String(w) === e.currentTarget.value),
          )
        }
      >
        {!field.required && <option value="">{usual}</option>}
        {words.map((w) => (
          <option key={String(w)} value={String(w)}>
            {name(w)}
          </option>
        ))}
      </select>
      <p class="about" id={`${id}-about`}>
        {field.about}
      </p>
      <Complaints field={field} id={`${id}-wrong`} />
    </div>
  );
}
