import { useRef } from 'preact/hooks';
import type { Desk } from '../../model/desk.ts';
import { type OpenedDrawer, openDrawer, savedDrawer } from '../../model/drawer/drawer-file.ts';
import { saveFile } from '../parts/save.ts';

/** Opens a drawer file, and says why where it cannot. */
export function OpenDrawer({ desk, onOpened }: { readonly desk: Desk; readonly onOpened: (opened: OpenedDrawer) => void }) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <input
        ref={input}
        type="file"
        accept=".json,application/json"
        hidden
        aria-label="drawer file to open"
        onChange={(e) => {
          const file = e.currentTarget.files?.[0];
          e.currentTarget.value = '';
          if (file) void openDrawer(desk, file).then(onOpened);
        }}
      />
      <button type="button" onClick={() => input.current?.click()}>
        open a drawer file
      </button>
    </>
  );
}

/** Saves the drawer as a file of its own. */
export function SaveDrawer({ desk }: { readonly desk: Desk }) {
  const save = (): void => {
    const { name, text } = savedDrawer(desk);
    saveFile(name, text, 'application/json');
  };
  return (
    <button type="button" onClick={save}>
      save the drawer
    </button>
  );
}
