import type { AerialDescription, SetDescription } from '#engine';
import { writeForPeople } from '#units';

const mm = (length: number): string => writeForPeople(length, 'length', 3);
const turns = (n: number): string => `${writeForPeople(n, 'turns', 4)} ${n === 1 ? 'turn' : 'turns'}`;

/**
 * What a set is made of, a line a stage, as one would say it at the bench.
 *
 * @param detectorTitle - as the drawer calls it, where that is known
 */
export function setWords({ aerial, tank, detector, phones }: SetDescription, detectorTitle = detectorWords(detector)): readonly string[] {
  const { coil, capacitor } = tank;
  const wound =
    coil.kind === 'geometry'
      ? `${turns(coil.turns)} of ${mm(coil.wireDiameter)} ${coil.metal} on ${mm(coil.innerDiameter)}${coil.turns > 1 ? `, ${mm(coil.turns * coil.pitch)} long` : ''}`
      : `a coil of ${writeForPeople(coil.inductance, 'inductance', 3)}`;
  const across = capacitor.parallel ? ` with ${writeForPeople(capacitor.parallel, 'capacitance', 3)} across it` : '';
  return [
    `aerial: ${aerialWords(aerial)}${tank.aerialCoupling ? `, ${couplingWords(tank.aerialCoupling)}` : ''}`,
    `tank: ${wound}; ${writeForPeople(capacitor.minimum, 'capacitance', 3)} to ${writeForPeople(capacitor.maximum, 'capacitance', 3)}${across}`,
    `detector: ${detectorTitle}, ${couplingWords(tank.detectorCoupling)}`,
    `phones: ${[
      phones.earpiece.name || phones.earpiece.kind,
      ...(phones.transformer ? [`through a transformer of ${Number(phones.transformer.ratio.toPrecision(3))}:1`] : []),
      ...(phones.load === undefined ? [] : [`${writeForPeople(phones.load, 'resistance', 3)} across it`]),
      ...(phones.bypass > 0 ? [`bypass ${writeForPeople(phones.bypass, 'capacitance', 3)}`] : []),
    ].join(', ')}`,
  ];
}

function aerialWords(a: AerialDescription): string {
  switch (a.kind) {
    case 'coil':
      return `the coil itself, ${a.axis.kind === 'vertical' ? 'lying flat' : 'standing on edge'}`;
    case 'wire-to-earth':
      return `a wire of ${mm(a.horizontal)}, ${mm(a.vertical)} high, with an earth of its own`;
    case 'wires': {
      const { shape } = a;
      if (shape.kind === 'dipole')
        return `a dipole of ${mm(shape.length)}, ${shape.orientation.kind === 'vertical' ? 'upright' : `broadside to ${Math.round((shape.orientation.broadside * 180) / Math.PI)} degrees`}`;
      if (shape.kind === 'rod')
        return `a rod of ${mm(shape.rod.length)} with ${shape.against.kind === 'drop-wire' ? `a drop wire of ${mm(shape.against.length)}` : shape.against.kind}`;
      return `a ${shape.kind}`;
    }
    default:
      return `a ${a.kind}`;
  }
}

function detectorWords(d: SetDescription['detector']): string {
  if (d.kind === 'junction') return `a junction of ${writeForPeople(d.saturationCurrent, 'current', 2)}`;
  return d.kind === 'channel' ? 'a field-effect channel' : 'as measured';
}

function couplingWords(c: NonNullable<SetDescription['tank']['aerialCoupling']>): string {
  switch (c.kind) {
    case 'direct':
      return 'across the whole coil';
    case 'tap':
      return `on a tap at ${turns(c.turns)}`;
    case 'link':
      return `by a link of ${turns(c.turns)}, ${mm(c.gap)} from the coil`;
    case 'series-capacitor':
      return `through ${writeForPeople(c.capacitance, 'capacitance', 2)}`;
  }
}
