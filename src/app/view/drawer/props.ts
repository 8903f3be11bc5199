import type { Field } from '#set-file';
import type { DrawerText } from '../../model/drawer/own-drawer.ts';
import type { Editing } from '../form/editing.tsx';

/** What each compartment of the drawer is handed. */
export interface CompartmentProps {
  readonly drawer: DrawerText;
  /** writes into the drawer of the document, whatever file it was in before */
  readonly editing: Editing;
  /** the field at a path of the document with this drawer; null where the forms have no such place */
  readonly fieldAt: (path: Field['path']) => Field | null;
}
