import { GivenError } from '../given-error.ts';
import type { Coil, CoilGeometry, Coupling, TankDescription, VariableCapacitor } from './description.ts';

/**
 * Refuses a tank that cannot be, with the place in the description and how to mend it.
 *
 * A tank that merely does not tune to the band is no error: the dial says so.
 */
export function checkTank(tank: TankDescription, aerialIsCoil: boolean): void {
  if (tank.coil.kind === 'geometry') checkGeometry(tank.coil);
  else checkElectrical(tank.coil);
  checkCapacitor(tank.capacitor);
  atLeastZero('tank.wiring.length', tank.wiring.length, 'm');
  above('tank.wiring.diameter', tank.wiring.diameter, 'm');
  atLeastZero('tank.joints.count', tank.joints.count, '');
  atLeastZero('tank.joints.resistance', tank.joints.resistance, 'ohm');
  atLeastZero('tank.strayCapacitance', tank.strayCapacitance, 'F');
  if (tank.detectorReturn !== undefined) above('tank.detectorReturn', tank.detectorReturn, 'ohm');
  checkCoupling('tank.detectorCoupling', tank.detectorCoupling, tank.coil);
  if (tank.detectorCoupling.kind === 'series-capacitor' && tank.detectorReturn === undefined)
    throw new GivenError(
      'tank.detectorReturn',
      'absent',
      'a series capacitor blocks the direct current of the detector',
      'Give a resistor across the detector, such as 470 kohm, or join it directly or to a tap.',
    );
  if (aerialIsCoil && tank.aerialCoupling)
    throw new GivenError(
      'tank.aerialCoupling',
      tank.aerialCoupling.kind,
      'the coil itself is the aerial',
      'Leave it out, or describe another aerial.',
    );
  if (!aerialIsCoil) {
    if (!tank.aerialCoupling)
      throw new GivenError(
        'tank.aerialCoupling',
        'absent',
        'the aerial must join the tank somewhere',
        'Say direct, tap, link or series-capacitor.',
      );
    checkCoupling('tank.aerialCoupling', tank.aerialCoupling, tank.coil);
  }
}

function checkGeometry(coil: CoilGeometry): void {
  const { turns, innerDiameter, wireDiameter, pitch } = coil;
  if (!(turns >= 1 && turns <= 1000))
    throw new GivenError(
      'tank.coil.turns',
      `${turns}`,
      'a coil has from 1 to 1000 turns',
      'Give less than a turn by its electrical values.',
    );
  above('tank.coil.innerDiameter', innerDiameter, 'm');
  above('tank.coil.wireDiameter', wireDiameter, 'm');
  checkPitch('tank.coil.pitch', turns, pitch, wireDiameter);
  if (wireDiameter > innerDiameter)
    throw new GivenError(
      'tank.coil.wireDiameter',
      `${wireDiameter} m`,
      `it cannot be bent around ${innerDiameter} m`,
      'Give a wire no thicker than the former.',
    );
  if (!(coil.surfaceFactor >= 1))
    throw new GivenError('tank.coil.surfaceFactor', `${coil.surfaceFactor}`, 'bright metal has 1', 'Give 1 or more.');
  atLeastZero('tank.coil.leadLength', coil.leadLength, 'm');
  if (coil.former) {
    if (!(coil.former.permittivity >= 1 && coil.former.permittivity < 100))
      throw new GivenError('tank.coil.former.permittivity', `${coil.former.permittivity}`, 'air has 1', 'Plastics have 2 to 4.');
    atLeastZero('tank.coil.former.lossTangent', coil.former.lossTangent, '');
  }
}

function checkPitch(path: string, turns: number, pitch: number, wireDiameter: number): void {
  above(path, pitch, 'm');
  // a millionth for values converted from inches
  if (turns > 1 && pitch < wireDiameter * (1 - 1e-6))
    throw new GivenError(path, `${pitch} m`, `turns of ${wireDiameter} m wire would lie in each other`, 'Give at least the wire diameter.');
}

function checkElectrical(coil: Extract<Coil, { kind: 'electrical' }>): void {
  above('tank.coil.inductance', coil.inductance, 'H');
  above('tank.coil.q', coil.q, '');
  above('tank.coil.frequency', coil.frequency, 'Hz');
  atLeastZero('tank.coil.selfCapacitance', coil.selfCapacitance, 'F');
  above('tank.coil.turns', coil.turns, '');
}

function checkCapacitor(c: VariableCapacitor): void {
  above('tank.capacitor.minimum', c.minimum, 'F');
  above('tank.capacitor.maximum', c.maximum, 'F');
  if (c.maximum < c.minimum)
    throw new GivenError('tank.capacitor.maximum', `${c.maximum} F`, `it lies below the minimum of ${c.minimum} F`, 'Exchange the two.');
  above('tank.capacitor.rotation', c.rotation, 'rad');
  atLeastZero('tank.capacitor.lossTangent', c.lossTangent, '');
  atLeastZero('tank.capacitor.contactResistance', c.contactResistance, 'ohm');
  atLeastZero('tank.capacitor.leadInductance', c.leadInductance, 'H');
  if (c.series !== undefined) above('tank.capacitor.series', c.series, 'F');
  if (c.parallel !== undefined) atLeastZero('tank.capacitor.parallel', c.parallel, 'F');
  if (c.law.kind === 'table') {
    const { angle, capacitance } = c.law;
    if (angle.length < 2 || angle.length !== capacitance.length)
      throw new GivenError(
        'tank.capacitor.law',
        `${angle.length} angles, ${capacitance.length} capacitances`,
        'a table needs two points or more, each with both',
        'Give the missing ones.',
      );
    for (let i = 0; i < angle.length; i++) {
      above(`tank.capacitor.law.capacitance[${i}]`, capacitance[i]!, 'F');
      if (i > 0 ? !(angle[i]! > angle[i - 1]!) : !(angle[0]! >= 0))
        throw new GivenError(`tank.capacitor.law.angle[${i}]`, `${angle[i]} rad`, 'angles ascend from 0', 'Sort the table by angle.');
    }
  }
}

function checkCoupling(path: string, coupling: Coupling, coil: Coil): void {
  switch (coupling.kind) {
    case 'direct':
      return;
    case 'series-capacitor':
      above(`${path}.capacitance`, coupling.capacitance, 'F');
      return;
    case 'tap':
      if (!(coupling.turns > 0 && coupling.turns <= coil.turns))
        throw new GivenError(
          `${path}.turns`,
          `${coupling.turns}`,
          `the coil has ${coil.turns} turns`,
          'Count from the earthed end, above 0, at most to the top.',
        );
      if (coil.kind === 'electrical' && coupling.turns < coil.turns && !(coil.tapCoupling > 0 && coil.tapCoupling < 1))
        throw new GivenError(
          'tank.coil.tapCoupling',
          `${coil.tapCoupling}`,
          'the parts of a coil are coupled by more than 0 and less than 1',
          'Give 0.5 for a long coil, 0.9 for a short one.',
        );
      return;
    case 'link':
      if (coil.kind === 'electrical')
        throw new GivenError(
          path,
          'link',
          'its coupling comes from the shapes of both windings, and the coil is given by values',
          'Give the coil by geometry, or use a tap.',
        );
      if (!(coupling.turns >= 1 && coupling.turns <= 1000))
        throw new GivenError(`${path}.turns`, `${coupling.turns}`, 'a link has from 1 to 1000 turns', 'Give at least 1.');
      above(`${path}.innerDiameter`, coupling.innerDiameter, 'm');
      above(`${path}.wireDiameter`, coupling.wireDiameter, 'm');
      checkPitch(`${path}.pitch`, coupling.turns, coupling.pitch, coupling.wireDiameter);
      if (!Number.isFinite(coupling.gap))
        throw new GivenError(`${path}.gap`, `${coupling.gap} m`, 'it is no number', 'Give 0 for touching windings.');
  }
}

function above(path: string, value: number, unit: string): void {
  if (!(value > 0 && value < Number.POSITIVE_INFINITY))
    throw new GivenError(path, `${value} ${unit}`.trim(), 'it must be a number above zero', 'Give a positive value.');
}

function atLeastZero(path: string, value: number, unit: string): void {
  if (!(value >= 0 && value < Number.POSITIVE_INFINITY))
    throw new GivenError(path, `${value} ${unit}`.trim(), 'it must be a number, zero or above', 'Give zero if there is none.');
}
