import type { EarForm } from '../forms/listener-form.ts';
import type { Report } from '../problem.ts';
import { mustAscend } from './ascending.ts';

/** Frequencies of an audiogram and of the room's bands must rise. */
export function checkEar(form: EarForm, report: Report): void {
  mustAscend(
    form.hearingLevel.map((p) => p.frequency),
    'frequency',
    (i) => ['ear', 'hearingLevel', i, 'frequency'],
    report,
  );
  if (typeof form.room === 'number' || form.room.kind !== 'bands') return;
  mustAscend(
    form.room.bands.map((b) => b.frequency),
    'frequency',
    (i) => ['ear', 'room', 'bands', i, 'frequency'],
    report,
  );
}
