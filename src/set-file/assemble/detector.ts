import type { DetectorDescription } from '#engine';
import type { DetectorForm } from '../forms/detector-form.ts';

/** The detector for the engine: pairs of a table as two lists. */
export function assembleDetector(form: DetectorForm): DetectorDescription {
  if (form.kind !== 'table') return form as DetectorDescription;
  const { points, voltage, current, csv: _, ...rest } = form;
  return { ...rest, voltage: points ? points.map((p) => p[0]) : voltage!, current: points ? points.map((p) => p[1]) : current! };
}
