import type { Desk } from '../../model/desk.ts';
import { type OpenedDrawer, openDrawer, savedDrawer } from '../../model/drawer/drawer-file.ts';
import { PickFile } from '../parts/PickFile.tsx';
import { saveFile } from '../parts/save.ts';

/** Opens a drawer file, and says why where it cannot. */
export function OpenDrawer({ desk, onOpened }: { readonly desk: Desk; readonly onOpened: (opened: OpenedDrawer) => void }) {
  return (
    <PickFile accept=".json,application/json" what="drawer file to open" onPick={([file]) => void openDrawer(desk, file!).then(onOpened)}>
      open a drawer file
    </PickFile>
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
