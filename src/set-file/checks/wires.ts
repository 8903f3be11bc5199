import { GivenError, layOut, wireStructure } from '#engine';
import { writeForPeople } from '#units';
import { assembleWires } from '../assemble/wires.ts';
import { type NamedWires, wiresPath } from '../assemble/wires-path.ts';
import type { WiresForm } from '../forms/wires-form.ts';
import { type Report, readPath } from '../problem.ts';
import { mustAscend } from './ascending.ts';

/** Finds what cannot be together in an aerial of wires: contradictions of the form here, everything of geometry by laying the wires out. */
export function checkWires(form: WiresForm, siteHeight: number | undefined, report: Report): void {
  let sound = true;
  const note: Report = (...problem) => {
    sound = false;
    report(...problem);
  };
  if (form.shape === 'beam') checkElements(form, note);
  if (form.shape === 'dipole' && form.slope !== 0 && (form.orientation === 'vertical' || form.orientation.kind === 'vertical'))
    note(
      ['aerial', 'slope'],
      writeForPeople(form.slope, 'angle'),
      'an upright dipole has no tip to the right',
      'Leave it out, or give a level orientation.',
    );
  if (!sound) return;
  try {
    layOut(wireStructure(assembleWires(form, siteHeight)));
  } catch (e) {
    if (!(e instanceof GivenError)) throw e;
    report(wiresPath(readPath(e.path), namedWires(form)), e.given, e.why, e.mend);
  }
}

function checkElements({ elements, driven }: Extract<WiresForm, { shape: 'beam' }>, report: Report): void {
  if (driven > elements.length)
    report(
      ['aerial', 'driven'],
      `${driven}`,
      'there is one element only, so no reflector before the driven one',
      'Write "driven": 1, or list the reflector first.',
    );
  mustAscend(
    elements.map((e) => e.position),
    'length',
    (i) => ['aerial', 'elements', i, 'position'],
    report,
  );
}

/** What the engine's names for an aerial's parts depend on. */
export function namedWires(form: WiresForm): NamedWires {
  return form.shape === 'beam' ? { shape: 'beam', driven: form.driven, folded: form.drivenElement !== 'straight' } : { shape: form.shape };
}
