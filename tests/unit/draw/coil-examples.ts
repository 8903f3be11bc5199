import type { AerialDescription, TankDescription } from '#engine';

const capacitor: TankDescription['capacitor'] = {
  minimum: 5e-12,
  maximum: 25e-12,
  rotation: Math.PI,
  law: { kind: 'capacitance-linear' },
  lossTangent: 1e-4,
  contactResistance: 0.02,
  leadInductance: 5e-9,
};
const rest = {
  capacitor,
  wiring: { length: 0.02, diameter: 1e-3 },
  joints: { count: 4, resistance: 0.5e-3 },
  strayCapacitance: 1e-12,
  detectorCoupling: { kind: 'direct' },
} as const;

export const TANKS: Readonly<Record<string, TankDescription>> = {
  'air-wound': {
    ...rest,
    coil: {
      kind: 'geometry',
      turns: 4.5,
      innerDiameter: 10e-3,
      wireDiameter: 1e-3,
      pitch: 2.25e-3,
      metal: 'copper',
      surfaceFactor: 1,
      leadLength: 5e-3,
    },
    aerialCoupling: { kind: 'link', turns: 1, innerDiameter: 10e-3, wireDiameter: 1e-3, pitch: 1e-3, gap: 1e-3 },
    detectorCoupling: { kind: 'tap', turns: 1.5 },
  },
  former: {
    ...rest,
    coil: {
      kind: 'geometry',
      turns: 70,
      innerDiameter: 50e-3,
      wireDiameter: 0.5e-3,
      pitch: 0.55e-3,
      metal: 'copper',
      surfaceFactor: 1,
      leadLength: 0.1,
      former: { permittivity: 3, lossTangent: 0.01 },
    },
    aerialCoupling: { kind: 'tap', turns: 12 },
    detectorCoupling: { kind: 'tap', turns: 35.25 },
  },
  flat: {
    ...rest,
    coil: {
      kind: 'geometry',
      turns: 12,
      innerDiameter: 0.6,
      wireDiameter: 1e-3,
      pitch: 8e-3,
      metal: 'copper',
      surfaceFactor: 1,
      leadLength: 0.1,
    },
    detectorCoupling: { kind: 'link', turns: 3, innerDiameter: 0.5, wireDiameter: 1e-3, pitch: 2e-3, gap: -0.02 },
  },
  bought: {
    ...rest,
    coil: { kind: 'electrical', inductance: 240e-6, q: 150, frequency: 1e6, selfCapacitance: 3e-12, turns: 1, tapCoupling: 0.6 },
    aerialCoupling: { kind: 'tap', turns: 0.25 },
  },
};

export const FRAME: AerialDescription = {
  kind: 'loop',
  diameter: 0.4,
  turns: 3,
  wireDiameter: 2e-3,
  windingLength: 0.02,
  metal: 'copper',
  axis: { kind: 'vertical' },
};
