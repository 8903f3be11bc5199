import type { CoilGeometry, TankDescription, VariableCapacitor } from '#engine';

/** 5 turns of 1 mm wire on a 10 mm former, 2 mm pitch. */
export const coil: CoilGeometry = {
  kind: 'geometry',
  turns: 5,
  innerDiameter: 0.01,
  wireDiameter: 0.001,
  pitch: 0.002,
  metal: 'copper',
  surfaceFactor: 1,
  leadLength: 0.008,
};

/** A small air variable. */
export const airVariable: VariableCapacitor = {
  minimum: 3e-12,
  maximum: 20e-12,
  rotation: Math.PI,
  law: { kind: 'capacitance-linear' },
  lossTangent: 1e-4,
  contactResistance: 0.02,
  leadInductance: 5e-9,
};

export const tank: TankDescription = {
  coil,
  capacitor: airVariable,
  wiring: { length: 0.02, diameter: 0.001 },
  joints: { count: 4, resistance: 0.0005 },
  strayCapacitance: 1.5e-12,
  aerialCoupling: { kind: 'tap', turns: 1 },
  detectorCoupling: { kind: 'tap', turns: 2.5 },
};

/** A tank as it is where the coil is the aerial: nothing joins it from outside. */
export function withoutAerial(description: TankDescription): TankDescription {
  const { aerialCoupling: _, ...rest } = description;
  return rest;
}
