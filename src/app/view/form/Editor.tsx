import { LIBRARY, type PartCategory } from '#parts';
import type { Field } from '#set-file';
import { DIMENSIONS } from '#units';
import { partStartOf, startOf } from '../../model/starts.ts';
import { Choice } from './Choice.tsx';
import { Complaints, type Editing, EditingContext, useEditing } from './editing.tsx';
import { Free } from './Free.tsx';
import { Quantity } from './Quantity.tsx';
import { idOf, inWords, nameOf } from './words.ts';

/** A form for whatever stands at a place of the set file, made from what the file's forms say. */
export function Editor({ field, editing }: { readonly field: Field; readonly editing: Editing }) {
  return (
    <EditingContext.Provider value={editing}>
      <form class="editor" onSubmit={(e) => e.preventDefault()}>
        <Inside field={field} />
      </form>
    </EditingContext.Provider>
  );
}

/** What a field holds, without its own name. */
function Inside({ field }: { readonly field: Field }) {
  if (field.kind === 'group') return field.part ? <NamedPart field={field} /> : <Group fields={field.fields} />;
  if (field.kind === 'forms') return <Forms field={field} />;
  if (field.kind === 'list') return <List field={field} />;
  return <Single field={field} />;
}

/** Fields of an object: those that are given or must be first, the others folded away. */
function Group({ fields }: { readonly fields: readonly Field[] }) {
  const shown = fields.filter((f) => f.required || f.given !== undefined);
  const others = fields.filter((f) => !shown.includes(f));
  return (
    <>
      {shown.map((f) => (
        <Named key={f.key} field={f} />
      ))}
      {others.length > 0 && (
        <details class="others">
          <summary>left as usual: {others.map((f) => inWords(f.key)).join(', ')}</summary>
          {others.map((f) => (
            <Named key={f.key} field={f} />
          ))}
        </details>
      )}
    </>
  );
}

/** A part by its name or by its values; where it is named, what is written beside takes the place of the part's own value. */
function NamedPart({ field }: { readonly field: Extract<Field, { kind: 'group' }> }) {
  const { edit } = useEditing();
  const id = `${idOf(field.path)}-part`;
  const { category, name } = field.part!;
  const values = name === null ? null : LIBRARY[category][name]?.values;
  const own = field.fields.filter((f) => f.key !== 'part');
  return (
    <>
      <div class="field">
        <label for={id}>part</label>
        <select id={id} value={name ?? ''} onChange={(e) => e.currentTarget.value && edit(field.path, { part: e.currentTarget.value })}>
          <option value="" disabled={name !== null}>
            by its values
          </option>
          {partsOf(category).map((c) => (
            <option key={c.name} value={c.name}>
              {c.title}
            </option>
          ))}
        </select>
        <Complaints field={field} id={`${id}-wrong`} />
      </div>
      <WrittenOut field={field} />
      <Group fields={values ? own.map((f) => ({ ...f, required: false, fallback: values[f.key] ?? f.fallback })) : own} />
    </>
  );
}

/** A named part with its values written into the set, so that each can be changed. */
function WrittenOut({ field }: { readonly field: Field }) {
  const { edit } = useEditing();
  const values = field.part?.name ? LIBRARY[field.part.category][field.part.name]?.values : undefined;
  if (!values || field.part?.category === 'wires') return null;
  return (
    <button type="button" onClick={() => edit(field.path, values)}>
      write its values out, to change them
    </button>
  );
}

/** A field under its name. */
function Named({ field }: { readonly field: Field }) {
  if (field.kind === 'group' || field.kind === 'forms' || field.kind === 'list')
    return (
      <fieldset>
        <legend>{nameOf(field)}</legend>
        {field.about && <p class="about">{field.about}</p>}
        <Inside field={field} />
      </fieldset>
    );
  return <Single field={field} />;
}

function Single({ field }: { readonly field: Field }) {
  switch (field.kind) {
    case 'quantity':
      return <Quantity field={field} />;
    case 'words':
    case 'flag':
      return <Choice field={field} />;
    case 'text':
    case 'free':
      return <Free field={field} />;
    default:
      return null;
  }
}

/** One of several forms of the same thing, or a part by name; below it what the chosen form needs. */
function Forms({ field }: { readonly field: Extract<Field, { kind: 'forms' }> }) {
  const { edit } = useEditing();
  const id = `${idOf(field.path)}-${field.by}`;
  const choices = field.part ? partsOf(field.part.category) : [];
  const value = field.part?.name ? `part:${field.part.name}` : (field.chosen ?? '');
  const choose = (word: string): void => {
    if (word === value) return;
    if (word === '') edit(field.path, undefined);
    else if (word === '=') edit(field.path, DIMENSIONS[field.dimension!].examples[0]);
    else if (word.startsWith('part:')) edit(field.path, { part: word.slice(5) });
    else edit(field.path, startOf(field.by, word, field.path));
  };
  const part = field.part && choices.find((c) => c.name === field.part?.name);
  return (
    <>
      <div class="field">
        <label for={id}>{inWords(field.by)}</label>
        <select id={id} value={value} aria-describedby={`${id}-wrong`} onChange={(e) => choose(e.currentTarget.value)}>
          {(!field.required || value === '') && <option value="">{field.required ? 'choose one' : 'as usual'}</option>}
          {choices.length > 0 && (
            <optgroup label="parts by name">
              {choices.map((c) => (
                <option key={c.name} value={`part:${c.name}`}>
                  {c.title}
                </option>
              ))}
            </optgroup>
          )}
          <optgroup label={choices.length > 0 ? 'by its values' : 'which'}>
            {field.words.map((w) => (
              <option key={w} value={w}>
                {inWords(w).replaceAll('-', ' ')}
              </option>
            ))}
            {field.dimension && <option value="=">as a number</option>}
          </optgroup>
        </select>
        {part && <p class="about">{part.title}</p>}
        <Complaints field={field} id={`${id}-wrong`} />
      </div>
      <WrittenOut field={field} />
      <Group fields={field.fields} />
    </>
  );
}

/** Any number of the same kind, each folded under its name. */
function List({ field }: { readonly field: Extract<Field, { kind: 'list' }> }) {
  const { edit } = useEditing();
  const values = Array.isArray(field.given) ? (field.given as readonly unknown[]) : [];
  const add = (): void => edit(field.path, [...values, values.at(-1) === undefined ? partStartOf(field.path) : another(values)]);
  return (
    <div class="list">
      {field.items.map((item, i) => (
        <details key={item.key}>
          <summary>{nameOf(item)}</summary>
          <Inside field={item} />
          <button
            type="button"
            onClick={() =>
              edit(
                field.path,
                values.filter((_, k) => k !== i),
              )
            }
          >
            take out {nameOf(item)}
          </button>
        </details>
      ))}
      <button type="button" onClick={add}>
        add another
      </button>
    </div>
  );
}

/** A copy of the last one; a name is made one that is not there yet. */
function another(values: readonly unknown[]): unknown {
  const last = structuredClone(values.at(-1));
  if (typeof last !== 'object' || last === null || !('name' in last)) return last;
  const names = new Set(values.map((v) => (v as { name?: unknown }).name));
  let n = 2;
  while (names.has(`${String(last.name)} ${n}`)) n++;
  return { ...last, name: `${String(last.name)} ${n}` };
}

/** The parts that come along, as a choice. */
const partsOf = (category: PartCategory): readonly { readonly name: string; readonly title: string }[] =>
  Object.entries(LIBRARY[category]).map(([name, p]) => ({ name, title: p.title ?? name }));
