import type { AerialDescription, RodCounterpart, SetDescription, WireShape } from '#engine';
import { writeForPeople } from '#units';

/** A thickness of wire is said in millimetres, thin as it may be. */
const mm = (length: number): string =>
  length > 0 && length < 1e-3 ? `${Number((length * 1e3).toPrecision(3))} mm` : writeForPeople(length, 'length', 3);
const turns = (n: number): string => `${writeForPeople(n, 'turns', 4)} ${n === 1 ? 'turn' : 'turns'}`;

/**
 * What a set is made of, a line a stage, as one would say it at the bench.
 *
 * @param detectorTitle - as the drawer calls it, where that is known
 */
export function setWords({ aerial, tank, detector, phones }: SetDescription, detectorTitle = detectorWords(detector)): readonly string[] {
  const { coil, capacitor } = tank;
  const inner = coil.kind === 'geometry' ? coil.innerDiameter : 0;
  const wound =
    coil.kind === 'geometry'
      ? `${turns(coil.turns)} of ${mm(coil.wireDiameter)} ${coil.metal} on ${mm(coil.innerDiameter)}${coil.turns > 1 ? `, ${mm(coil.turns * coil.pitch)} long` : ''}`
      : `a coil of ${writeForPeople(coil.inductance, 'inductance', 3)}`;
  const across = capacitor.parallel ? ` with ${writeForPeople(capacitor.parallel, 'capacitance', 3)} across it` : '';
  return [
    `aerial: ${aerialWords(aerial)}${tank.aerialCoupling ? `, ${couplingWords(tank.aerialCoupling, inner)}` : ''}`,
    `tank: ${wound}; ${writeForPeople(capacitor.minimum, 'capacitance', 3)} to ${writeForPeople(capacitor.maximum, 'capacitance', 3)}${across}`,
    `detector: ${detectorTitle}, ${couplingWords(tank.detectorCoupling, inner)}`,
    `phones: ${[
      phones.earpiece.name || phones.earpiece.kind,
      ...(phones.transformer ? [`through a transformer of ${Number(phones.transformer.ratio.toPrecision(3))}:1`] : []),
      ...(phones.load === undefined ? [] : [`${writeForPeople(phones.load, 'resistance', 3)} across it`]),
      ...(phones.choke ? [`a choke of ${writeForPeople(phones.choke.inductance, 'inductance', 3)} across it`] : []),
      ...(phones.bypass > 0 ? [`bypass ${writeForPeople(phones.bypass, 'capacitance', 3)}`] : []),
    ].join(', ')}`,
  ];
}

function aerialWords(a: AerialDescription): string {
  switch (a.kind) {
    case 'coil':
      return `the coil itself, ${a.axis.kind === 'vertical' ? 'lying flat' : `standing on edge, its edge to ${degrees(a.axis.plane)}`}`;
    case 'wire-to-earth':
      return `a wire of ${mm(a.horizontal)}, ${mm(a.vertical)} high, with an earth of its own`;
    case 'wires': {
      const { shape } = a;
      return shapeWords(shape);
    }
    default:
      return `a ${a.kind}`;
  }
}

const degrees = (angle: number): string => `${Math.round((angle * 180) / Math.PI)} degrees`;
const lies = (o: Extract<WireShape, { kind: 'dipole' }>['orientation']): string =>
  o.kind === 'vertical' ? 'upright' : `broadside to ${degrees(o.broadside)}`;

function shapeWords(shape: WireShape): string {
  switch (shape.kind) {
    case 'dipole':
      return shape.includedAngle < Math.PI - 1e-9
        ? `a V of ${mm(shape.length)}, ${degrees(shape.includedAngle)} between its halves, ${lies(shape.orientation)}`
        : `a dipole of ${mm(shape.length)}, ${lies(shape.orientation)}`;
    case 'folded-dipole':
      return `a folded dipole of ${mm(shape.length)}, ${mm(shape.spacing)} between its conductors, ${lies(shape.orientation)}`;
    case 'rod':
      return `a rod of ${mm(shape.rod.length)} with ${againstWords(shape.against)}`;
    case 'square-loop':
      return `a square loop, ${mm(shape.side)} a side, broadside to ${degrees(shape.bearing)}, fed at the ${shape.fedAt}`;
    case 'round-loop':
      return `a round loop ${mm(shape.diameter)} across, ${shape.axis.kind === 'vertical' ? 'lying flat' : `its edge to ${degrees(shape.axis.plane)}`}`;
    case 'beam': {
      const { reflector, driven, directors } = shape;
      const elements = [
        ...(reflector ? [`reflector ${mm(reflector.length)}, ${mm(reflector.behind)} behind`] : []),
        `dipole ${mm(driven.length)}`,
        ...directors.map((d) => `director ${mm(d.length)}, ${mm(d.ahead)} ahead`),
      ];
      return `a beam to ${degrees(shape.bearing)}, ${shape.polarisation === 'vertical' ? 'upright' : 'level'}: ${elements.join('; ')}`;
    }
    case 'free-list':
      return `an aerial of ${shape.wires.length} wires`;
  }
}

function againstWords(against: RodCounterpart): string {
  switch (against.kind) {
    case 'drop-wire':
      return `a drop wire of ${mm(against.length)}`;
    case 'radials':
      return `${against.count} radials of ${mm(against.length)}, ${against.droop < 1e-9 ? 'level' : `drooping by ${degrees(against.droop)}`}`;
    case 'earth-wire':
      return `a wire of ${mm(against.length)} to earth`;
    case 'box':
      return 'the case of the set';
  }
}

function detectorWords(d: SetDescription['detector']): string {
  if (d.kind === 'junction') return `a junction of ${writeForPeople(d.saturationCurrent, 'current', 2)}`;
  return d.kind === 'channel' ? 'a field-effect channel' : 'as measured';
}

/** @param inner - of the coil [m] */
function couplingWords(c: NonNullable<SetDescription['tank']['aerialCoupling']>, inner: number): string {
  switch (c.kind) {
    case 'direct':
      return 'across the whole coil';
    case 'tap':
      return `on a tap at ${turns(c.turns)}`;
    case 'link':
      return c.gap < 0
        ? `by a link of ${turns(c.turns)} on ${mm(c.innerDiameter)}, ${c.innerDiameter < inner ? 'inside' : 'over'} the earthed end of the coil`
        : `by a link of ${turns(c.turns)}, ${mm(c.gap)} from the coil`;
    case 'series-capacitor':
      return `through ${writeForPeople(c.capacitance, 'capacitance', 2)}`;
  }
}
