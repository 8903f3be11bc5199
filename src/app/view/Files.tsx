import type { Desk } from '../model/desk.ts';
import { changeLight, light } from '../model/light.ts';
import { savedFile } from '../model/saved-file.ts';
import { exampleAddresses } from '../shipped-files.ts';
import { PickFile } from './parts/PickFile.tsx';
import { saveFile } from './parts/save.ts';

function save(desk: Desk): void {
  const { name, text } = savedFile(desk.value.value);
  saveFile(name, text, 'application/json');
}

/** Opening, saving, sharing; undo and redo; light. */
export function Files({ desk }: { readonly desk: Desk }) {
  return (
    <ul class="menu" aria-label="file">
      <li>
        <button type="button" disabled={!desk.canUndo.value} onClick={() => desk.undo()}>
          Undo
        </button>
      </li>
      <li>
        <button type="button" disabled={!desk.canRedo.value} onClick={() => desk.redo()}>
          Redo
        </button>
      </li>
      <li>
        <PickFile accept=".json,application/json" what="set files to open" multiple onPick={(files) => void desk.openFiles(files)}>
          Open
        </PickFile>
      </li>
      <li>
        <select
          aria-label="open an example"
          value=""
          onChange={(e) => {
            const { value } = e.currentTarget;
            e.currentTarget.value = '';
            if (value) void desk.openExample(value);
          }}
        >
          <option value="">Examples</option>
          {Object.keys(exampleAddresses)
            .filter((name) => name !== 'fenmarket.json')
            .map((name) => (
              <option key={name} value={name}>
                {name.replace('.json', '').replaceAll('-', ' ')}
              </option>
            ))}
        </select>
      </li>
      <li>
        <button type="button" onClick={() => save(desk)}>
          Save
        </button>
      </li>
      <li>
        <button type="button" onClick={() => void desk.share()}>
          Share
        </button>
      </li>
      <li>
        <button type="button" onClick={changeLight}>
          {{ auto: 'Light: as the system', day: 'Light: day', night: 'Light: night' }[light.value]}
        </button>
      </li>
    </ul>
  );
}
