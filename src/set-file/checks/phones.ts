import type * as z from 'zod/mini';
import { writeForPeople } from '#units';
import type { earpieceForm, PhonesForm, transformerForm } from '../forms/phones-form.ts';
import type { Path } from '../json/positions.ts';
import type { Report } from '../problem.ts';
import { mustAscend } from './ascending.ts';

/** Finds what cannot be in the phones. A piezo earpiece without a way for the direct current can be built: the engine says what comes of it. */
export function checkPhones(form: PhonesForm, report: Report): void {
  if (form.transformer) checkTransformer(form.transformer, ['phones', 'transformer'], report);
  checkEarpiece(form.earpiece, ['phones', 'earpiece'], report);
}

export function checkTransformer(form: z.core.output<typeof transformerForm>, path: Path, report: Report): void {
  const { leakageInductance: leakage, primaryInductance: primary } = form;
  if (leakage === undefined || leakage < primary) return;
  report(
    [...path, 'leakageInductance'],
    writeForPeople(leakage, 'inductance'),
    `it is not below the primary inductance of ${writeForPeople(primary, 'inductance')}, so that nothing would be coupled`,
    'Leakage is measured at the primary with the secondary shorted; give a smaller value.',
  );
}

export function checkEarpiece(form: z.core.output<typeof earpieceForm>, path: Path, report: Report): void {
  const { sensitivity } = form;
  if (typeof sensitivity !== 'number')
    mustAscend(
      sensitivity.map((p) => p.frequency),
      'frequency',
      (i) => [...path, 'sensitivity', i, 'frequency'],
      report,
    );
}
