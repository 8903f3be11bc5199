import type { Coupling, SetDescription } from '#engine';
import { aerialPlan } from './aerial-plan.ts';
import { capacitorLabels, coilLabel, detectorLabel, earpieceLabel, type KnownValues, tapText } from './part-labels.ts';
import { partValue } from './part-value.ts';

const joined = (lines: readonly string[]): string => lines.join(' ');

/** The circuit in words, from the aerial to the ear, for those who do not see it. */
export function circuitWords(set: SetDescription, known: KnownValues): string {
  const { tank, phones } = set;
  const aerial = aerialPlan(set.aerial);
  const labels = capacitorLabels(tank);
  const how = tank.aerialCoupling;
  const p = phones;
  return [
    aerial === null
      ? 'The coil is the aerial.'
      : `Aerial: ${joined(aerial.label.lines)}${aerial.footLabel.lines.length > 0 ? ` against ${joined(aerial.footLabel.lines)}` : ''}${set.aerial.feeder ? ', through a feeder' : ''}${how ? `, joined ${couplingWords(set, how)}` : ''}.`,
    `Tuned circuit: ${joined(coilLabel(set, known).lines)}; ${joined(labels.variable.lines)}${[labels.series, labels.parallel].map((l) => (l ? `, capacitor ${joined(l.lines)}` : '')).join('')}.`,
    `${joined(detectorLabel(set.detector).lines)}, joined ${couplingWords(set, tank.detectorCoupling)}${tank.detectorReturn === undefined ? '' : `, return ${partValue(tank.detectorReturn, 'ohm')}`}.`,
    `Output: ${[
      ...(p.bypass > 0 ? [`bypass ${partValue(p.bypass, 'F')}`] : []),
      ...(p.load === undefined ? [] : [`load ${partValue(p.load, 'ohm')}`]),
      ...(p.choke ? [`choke ${partValue(p.choke.inductance, 'H')}`] : []),
      ...(p.blocking === undefined ? [] : [`blocking capacitor ${partValue(p.blocking, 'F')}`]),
      ...(p.transformer ? ['transformer'] : []),
      joined(earpieceLabel(p).lines),
    ].join(', ')}.`,
  ].join(' ');
}

function couplingWords({ tank }: SetDescription, c: Coupling): string {
  switch (c.kind) {
    case 'direct':
      return 'to the top of the coil';
    case 'tap':
      return c.turns < tank.coil.turns ? `at ${tapText(tank, c.turns)}` : 'to the top of the coil';
    case 'link':
      return 'by a link';
    case 'series-capacitor':
      return `through ${partValue(c.capacitance, 'F')} to the top of the coil`;
  }
}
