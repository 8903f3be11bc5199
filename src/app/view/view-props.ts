import type { Desk } from '../model/desk.ts';
import type { Listening } from '../model/listening.ts';
import type { Editing } from './form/editing.tsx';

/** What every view is handed. */
export interface ViewProps {
  readonly desk: Desk;
  readonly editing: Editing;
  readonly listening: Listening;
}
