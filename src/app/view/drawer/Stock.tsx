import { NEW_CHOKE, NEW_FORMER, NEW_GARDEN, NEW_ROD, NEW_STAYS } from '../../model/drawer/new-parts.ts';
import { isObject, listOf } from '../../model/drawer/own-drawer.ts';
import { EditingContext } from '../form/editing.tsx';
import { asText } from '../form/words.ts';
import type { CompartmentProps } from './props.ts';
import { Cells, Row } from './Row.tsx';

/** What to wind on: a drill bit comes off again, a tube may stay in the coil. */
export function Formers({ drawer, editing, fieldAt }: CompartmentProps) {
  const all = listOf(drawer, 'formers');
  return (
    <section aria-labelledby="drawer-formers">
      <h3 id="drawer-formers">Formers and drill bits</h3>
      <ul class="stock">
        {all.map((former, i) => {
          const path = ['drawer', 'formers', i] as const;
          const field = fieldAt(path);
          const stays = isObject(former) && former.stays !== undefined;
          const inside = stays ? fieldAt([...path, 'stays']) : null;
          const what = nameOf(former, 'diameter', `former ${i + 1}`);
          return (
            <Row key={i} editing={editing} what={what} onTakeOut={() => editing.edit(['drawer', 'formers'], withoutItem(all, i))}>
              {field && <Cells field={field} what={what} cells={OF_A_FORMER} />}
              <label class="check">
                <input
                  type="checkbox"
                  checked={stays}
                  onChange={(e) => editing.edit([...path, 'stays'], e.currentTarget.checked ? NEW_STAYS : undefined)}
                />
                <span>
                  stays in the coil<span class="visually-hidden">, {what}</span>
                </span>
              </label>
              {inside && <Cells field={inside} what={what} cells={OF_WHAT_STAYS} />}
            </Row>
          );
        })}
      </ul>
      <button type="button" onClick={() => editing.edit(['drawer', 'formers'], [...all, all.at(-1) ?? NEW_FORMER])}>
        add a former
      </button>
    </section>
  );
}

const OF_A_FORMER = [
  ['title', 'what it is', ''],
  ['diameter', 'outer diameter'],
  ['length', 'length', 'enough'],
] as const;
const OF_WHAT_STAYS = [
  ['permittivity', 'permittivity'],
  ['lossTangent', 'loss tangent'],
] as const;

/** Rods and tubes for aerials. */
export function Rods({ drawer, editing, fieldAt }: CompartmentProps) {
  const all = listOf(drawer, 'rods');
  return (
    <section aria-labelledby="drawer-rods">
      <h3 id="drawer-rods">Rods and tubes for aerials</h3>
      <p class="about">Each can be cut, or pushed in, to any shorter length.</p>
      <ul class="stock">
        {all.map((rod, i) => {
          const field = fieldAt(['drawer', 'rods', i]);
          const what = nameOf(rod, 'length', `rod ${i + 1}`);
          return (
            <Row key={i} editing={editing} what={what} onTakeOut={() => editing.edit(['drawer', 'rods'], withoutItem(all, i))}>
              {field && <Cells field={field} what={what} cells={OF_A_ROD} />}
            </Row>
          );
        })}
      </ul>
      <button type="button" onClick={() => editing.edit(['drawer', 'rods'], [...all, all.at(-1) ?? NEW_ROD])}>
        add a rod
      </button>
    </section>
  );
}

const OF_A_ROD = [
  ['title', 'what it is', ''],
  ['length', 'length'],
  ['diameter', 'thickness'],
  ['metal', 'metal'],
  ['count', 'how many'],
] as const;

/** Coils with iron, which let the direct current of the detector past a piezo and keep the sound. */
export function Chokes({ drawer, editing, fieldAt }: CompartmentProps) {
  const all = listOf(drawer, 'chokes');
  return (
    <section aria-labelledby="drawer-chokes">
      <h3 id="drawer-chokes">Chokes</h3>
      <p class="about">Across a piezo earpiece in place of a resistor; the winding of an old transformer does as well.</p>
      <ul class="stock">
        {all.map((choke, i) => {
          const field = fieldAt(['drawer', 'chokes', i]);
          const what = nameOf(choke, 'inductance', `choke ${i + 1}`);
          return (
            <Row key={i} editing={editing} what={what} onTakeOut={() => editing.edit(['drawer', 'chokes'], withoutItem(all, i))}>
              {field && <Cells field={field} what={what} cells={OF_A_CHOKE} />}
            </Row>
          );
        })}
      </ul>
      <button type="button" onClick={() => editing.edit(['drawer', 'chokes'], [...all, all.at(-1) ?? NEW_CHOKE])}>
        add a choke
      </button>
    </section>
  );
}

const OF_A_CHOKE = [
  ['title', 'what it is', ''],
  ['inductance', 'inductance'],
  ['resistance', 'resistance'],
] as const;

/** Room for a long wire. */
export function Garden({ drawer, editing, fieldAt }: CompartmentProps) {
  const there = drawer.garden !== undefined;
  const field = there ? fieldAt(['drawer', 'garden']) : null;
  return (
    <section aria-labelledby="drawer-garden">
      <h3 id="drawer-garden">A garden</h3>
      <label class="check">
        <input
          type="checkbox"
          checked={there}
          onChange={(e) => editing.edit(['drawer', 'garden'], e.currentTarget.checked ? NEW_GARDEN : undefined)}
        />
        <span>there is room to hang a long wire, with an earth rod of its own</span>
      </label>
      <p class="about">Never the earth of the mains, nor a gas or water pipe. Keep clear of overhead lines.</p>
      {field && (
        <EditingContext.Provider value={editing}>
          <div class="stock-row">
            <Cells
              field={field}
              what="garden"
              cells={[
                ['length', 'room for a level wire'],
                ['height', 'how high it hangs'],
                ['earthResistance', 'resistance of the earth rod'],
              ]}
            />
          </div>
        </EditingContext.Provider>
      )}
    </section>
  );
}

function nameOf(item: unknown, key: string, otherwise: string): string {
  if (!isObject(item)) return otherwise;
  return [asText(item.title), asText(item[key])].filter((t) => t !== '').join(' ') || otherwise;
}

function withoutItem(all: readonly unknown[], at: number): readonly unknown[] | undefined {
  const left = all.filter((_, i) => i !== at);
  return left.length > 0 ? left : undefined;
}
