import type { EarDescription } from '#engine';
import type { EarForm } from '../forms/listener-form.ts';

/** The listener for the engine: a level alone is A-weighted. */
export function assembleEar(form: EarForm): EarDescription {
  return { hearingLevel: form.hearingLevel, room: typeof form.room === 'number' ? { kind: 'a-weighted', level: form.room } : form.room };
}
