import { useMemo } from 'preact/hooks';
import { fieldAt } from '#set-file';
import type { Desk } from '../../model/desk.ts';
import { editPlace, placeFileOf, placeOf } from '../../model/own-place.ts';
import { Editor } from '../form/Editor.tsx';
import type { Editing } from '../form/editing.tsx';

/** The form of the place. One that is in a file of its own is shown from there, and becomes the set's own with the first change. */
export function PlaceForm({ desk, editing }: { readonly desk: Desk; readonly editing: Editing }) {
  const [document, files] = [desk.value.value, desk.bench.files.value];
  const file = placeFileOf(document);
  const field = useMemo(() => {
    const place = placeOf(desk);
    return fieldAt({ ...(document as object), place: place ?? undefined }, ['place']);
  }, [desk, document, files]);
  const own: Editing = { ...editing, edit: (path, value, drag) => editPlace(desk, path, value, drag) };
  return (
    <section aria-label="place">
      <h2>place</h2>
      {file !== null && (
        <p class="about">
          This place is in the file {file}, which is left as it is: with your first change here the place is written into this set.
        </p>
      )}
      {field && <Editor field={field} editing={own} />}
    </section>
  );
}
