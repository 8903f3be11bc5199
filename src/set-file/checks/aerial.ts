import { writeForPeople } from '#units';
import type { AerialForm } from '../forms/aerial-form.ts';
import type { Path } from '../json/positions.ts';
import type { Report } from '../problem.ts';
import { mustAscend } from './ascending.ts';
import { checkWires } from './wires.ts';

/**
 * Finds what cannot be together in an aerial.
 *
 * @param siteHeight - of the place, if the file has one [m]
 */
export function checkAerial(form: AerialForm, siteHeight: number | undefined, report: Report): void {
  const path = ['aerial'];
  switch (form.kind) {
    case 'electrical':
      checkElectrical(form, path, report);
      return;
    case 'dipole':
      mustBeThin(form, path, report);
      return;
    case 'whip': {
      mustBeThin(form, path, report);
      const { counterpoise } = form;
      if (counterpoise !== 'plane' && 'length' in counterpoise) mustBeThin(counterpoise, [...path, 'counterpoise'], report);
      return;
    }
    case 'loop':
      checkLoop(form, path, report);
      return;
    case 'wire-to-earth':
      mustBeThin({ length: form.vertical, diameter: form.diameter }, path, report);
      return;
    case 'wires':
      checkWires(form, siteHeight, report);
      return;
    case 'coil':
      if (form.feeder)
        report([...path, 'feeder'], 'a feeder', 'the coil itself is the aerial, and stands in the set', 'Leave the feeder out.');
  }
}

/** A rod is a wire only if it is much longer than thick. */
function mustBeThin({ length, diameter }: { readonly length: number; readonly diameter: number }, path: Path, report: Report): void {
  if (length >= 5 * diameter) return;
  const [l, d] = [writeForPeople(length, 'length'), writeForPeople(diameter, 'length')];
  report([...path, 'diameter'], d, `a conductor ${l} long is no wire at that thickness`, 'Give a diameter below a fifth of the length.');
}

function checkElectrical(form: Extract<AerialForm, { kind: 'electrical' }>, path: Path, report: Report): void {
  if (form.gain !== undefined && form.effectiveLength !== undefined)
    report([...path, 'effectiveLength'], writeForPeople(form.effectiveLength, 'length'), 'a gain is given as well', 'Give one of the two.');
  if (form.gain === undefined && form.effectiveLength === undefined)
    report(
      [...path, 'gain'],
      'nothing',
      'nothing says how much the aerial picks up',
      'Give a gain, such as "2.15 dBi", or an effectiveLength.',
    );
  if (typeof form.impedance !== 'number')
    mustAscend(
      form.impedance.map((p) => p.frequency),
      'frequency',
      (i) => [...path, 'impedance', i, 'frequency'],
      report,
    );
  const vertical = form.orientation === 'vertical' || form.orientation.kind === 'vertical';
  if (vertical && form.frontToBack > 0)
    report([...path, 'frontToBack'], `${form.frontToBack} dB`, 'a vertical element given without a bearing has no front', 'Leave it out.');
}

function checkLoop(form: Extract<AerialForm, { kind: 'loop' }>, path: Path, report: Report): void {
  const { diameter, wireDiameter, turns, windingLength } = form;
  if (wireDiameter > diameter / 4)
    report(
      [...path, 'wireDiameter'],
      writeForPeople(wireDiameter, 'diameter'),
      `a loop ${writeForPeople(diameter, 'length')} across cannot be wound of wire that thick`,
      'Give a wire below a quarter of the loop.',
    );
  // a millionth for lengths written in inches
  if (windingLength !== undefined && windingLength < turns * wireDiameter * (1 - 1e-6))
    report(
      [...path, 'windingLength'],
      writeForPeople(windingLength, 'length'),
      `${turns} turns of ${writeForPeople(wireDiameter, 'diameter')} wire do not fit into it side by side`,
      `Give ${writeForPeople(turns * wireDiameter, 'length')} or more.`,
    );
}
