import { LIBRARY } from '#parts';
import { NEW_PARTS } from '../../model/drawer/new-parts.ts';
import { type DrawerText, entriesOf, freeName, fromLibrary, isObject, listOf, ticked, without } from '../../model/drawer/own-drawer.ts';
import { partField } from '../../model/drawer/part-field.ts';
import { withValue } from '../../model/edit.ts';
import type { Editing } from '../form/editing.tsx';
import { Cell } from './Cell.tsx';
import { NameField } from './NameField.tsx';
import type { CompartmentProps } from './props.ts';
import { Cells, Row } from './Row.tsx';

/** Wires: how thick, how much there is of each, and where it takes solder. */
export function Wires({ drawer, editing, fieldAt }: CompartmentProps) {
  const own = entriesOf(drawer, 'wires');
  const borrowed = fromLibrary(drawer, 'wires').filter((name) => !own.some(([n]) => n === name));
  const add = (name: string): void => {
    const part = LIBRARY.wires[name];
    if (!part) editing.edit(['drawer', 'wires', freeName(drawer, 'wires', NEW_PARTS.wires.name)], NEW_PARTS.wires.part);
    else editing.edit(['drawer', 'wires', name], asOwn(name));
  };
  return (
    <section aria-labelledby="drawer-wires">
      <h3 id="drawer-wires">Wire</h3>
      <p class="about">
        Thickness is of the bare wire. A tap can be soldered every quarter turn on bare wire; on enamelled wire where a loop is drawn out,
        say every 1 turn. Where no length is given there is as much as is needed.
      </p>
      <ul class="stock">
        {own.map(([name, part]) => {
          const thick = thickness(name, isObject(part) ? part.values : undefined);
          const whole = fieldAt(['drawer', 'wires', name]);
          return (
            <Row
              key={name}
              editing={editing}
              what={name}
              onTakeOut={() => editing.edit(['drawer', 'wires'], without(drawer, 'wires', name))}
            >
              <NameField drawer={drawer} editing={editing} category="wires" name={name} />
              {thick && <Cell field={thick} label="thickness" name={`thickness, ${name}`} />}
              {whole && <Cells field={whole} what={name} cells={OF_A_WIRE} />}
            </Row>
          );
        })}
        {borrowed.map((name) => (
          <BorrowedWire key={name} {...{ drawer, editing, fieldAt, name }} />
        ))}
      </ul>
      <label>
        <span class="visually-hidden">add a wire</span>
        <select
          value=""
          onChange={(e) => {
            const { value } = e.currentTarget;
            e.currentTarget.value = '';
            if (value) add(value);
          }}
        >
          <option value="">add a wire</option>
          <option value="?">one of your own</option>
          <optgroup label="of the library">
            {Object.entries(LIBRARY.wires)
              .filter(([name]) => !own.some(([n]) => n === name) && !borrowed.includes(name))
              .map(([name, part]) => (
                <option key={name} value={name}>
                  {part.title ?? name}
                </option>
              ))}
          </optgroup>
        </select>
      </label>
    </section>
  );
}

const OF_A_WIRE = [
  ['length', 'how much', 'enough'],
  ['tapEvery', 'tap every [turns]'],
] as const;

const thickness = (name: string, values: unknown) => {
  const field = partField('wires', name, isObject(values) ? values : {});
  return field?.kind === 'group' ? (field.fields.find((f) => f.key === 'wireDiameter') ?? null) : null;
};

/** A wire of the library by its name; as soon as it is said how much of it there is, it is a wire of one's own. */
function BorrowedWire({ drawer, editing, fieldAt, name }: CompartmentProps & { readonly name: string }) {
  const field = fieldAt(['drawer', 'wires', name]) ?? null;
  const title = LIBRARY.wires[name]!.title ?? name;
  const making: Editing = {
    ...editing,
    edit: (path, value, drag) => editing.edit(['drawer'], withValue(withOwn(drawer, name), path.slice(1), value), drag),
  };
  return (
    <Row editing={making} what={title} onTakeOut={() => editing.edit(['drawer', 'fromLibrary'], ticked(drawer, name, false))}>
      <p class="cell broad">{title}</p>
      {field && <Cells field={field} what={title} cells={OF_A_WIRE} />}
    </Row>
  );
}

/** A wire of the library as a part of one's own; enamel is scraped off where a loop was drawn out. */
function asOwn(name: string): Readonly<Record<string, unknown>> {
  const { title, values } = LIBRARY.wires[name]!;
  return { ...(title !== undefined && { title }), values, ...(name.startsWith('enamelled') && { tapEvery: 1 }) };
}

function withOwn(drawer: DrawerText, name: string): unknown {
  const wires = { ...(isObject(drawer.wires) ? drawer.wires : {}), [name]: asOwn(name) };
  return { ...drawer, fromLibrary: listOf(drawer, 'fromLibrary').filter((n) => n !== name), wires };
}
