import type { DetectorForm, DetectorTableForm } from '../forms/detector-form.ts';
import type { Path } from '../json/positions.ts';
import type { Report } from '../problem.ts';
import { faultsOfLaw } from './law.ts';

/** Finds what cannot be in a detector; `path` is where it stands, in the set or in a drawer. */
export function checkDetector(form: DetectorForm, path: Path, report: Report): void {
  if (form.kind === 'junction' && (form.energyGap === undefined) !== (form.temperatureExponent === undefined)) {
    const missing = form.energyGap === undefined ? 'energyGap' : 'temperatureExponent';
    report([...path, missing], 'nothing', 'energyGap and temperatureExponent go together', 'Give both, or neither.');
  }
  if (form.kind === 'table') checkTable(form, path, report);
}

function checkTable(form: DetectorTableForm, path: Path, report: Report): void {
  const { voltage, current, points } = form;
  if (points && (voltage || current)) {
    report([...path, 'points'], `${points.length} points`, 'the lists voltage and current are given as well', 'Give one of the two.');
    return;
  }
  if (!points && !(voltage && current)) {
    const missing = voltage ? 'current' : 'voltage';
    report([...path, missing], 'nothing', 'nothing says what was measured', 'Give voltage and current, or points, or "csv": "diode.csv".');
    return;
  }
  const volts = points ? points.map((p) => p[0]) : voltage!;
  const amperes = points ? points.map((p) => p[1]) : current!;
  for (const { row, list, given, why, mend } of faultsOfLaw(volts, amperes))
    report(points ? [...path, 'points', row, list === 'voltage' ? 0 : 1] : [...path, list, row], given, why, mend);
}
