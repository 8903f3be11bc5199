import { describe, expect, test } from 'vitest';
import { type CoilGeometry, type Coupling, GivenError, type TankDescription, tankModel, type VariableCapacitor } from '#engine';
import { airVariable, coil, tank, withoutAerial } from './described-tank.ts';

const withCoil = (over: Partial<CoilGeometry>): TankDescription => ({ ...tank, coil: { ...coil, ...over } });
const withCapacitor = (over: Partial<VariableCapacitor>): TankDescription => ({ ...tank, capacitor: { ...airVariable, ...over } });
const electrical = {
  kind: 'electrical',
  inductance: 2e-7,
  q: 250,
  frequency: 1e8,
  selfCapacitance: 0,
  turns: 5,
  tapCoupling: 0.6,
} as const;
const link: Coupling = { kind: 'link', turns: 1, innerDiameter: 0.01, wireDiameter: 0.001, pitch: 0.002, gap: 0 };

const CASES: readonly [path: string, given: TankDescription][] = [
  ['tank.coil.turns', withCoil({ turns: -3 })],
  ['tank.coil.turns', withCoil({ turns: 0.5 })],
  ['tank.coil.turns', withCoil({ turns: Number.NaN })],
  ['tank.coil.turns', withCoil({ turns: 1e9 })],
  ['tank.coil.innerDiameter', withCoil({ innerDiameter: 0 })],
  ['tank.coil.wireDiameter', withCoil({ wireDiameter: Number.POSITIVE_INFINITY })],
  ['tank.coil.wireDiameter', withCoil({ wireDiameter: 0.02, pitch: 0.03 })],
  ['tank.coil.pitch', withCoil({ pitch: 0.0009 })],
  ['tank.coil.pitch', withCoil({ turns: 1, pitch: 0 })],
  ['tank.coil.surfaceFactor', withCoil({ surfaceFactor: 0.5 })],
  ['tank.coil.leadLength', withCoil({ leadLength: -0.01 })],
  ['tank.coil.former.permittivity', withCoil({ former: { permittivity: 0.5, lossTangent: 0 } })],
  ['tank.coil.former.lossTangent', withCoil({ former: { permittivity: 3, lossTangent: -1 } })],
  ['tank.coil.inductance', { ...tank, coil: { ...electrical, inductance: 0 } }],
  ['tank.coil.q', { ...tank, coil: { ...electrical, q: -1 } }],
  ['tank.coil.tapCoupling', { ...tank, coil: { ...electrical, tapCoupling: 1 } }],
  ['tank.capacitor.minimum', withCapacitor({ minimum: 0 })],
  ['tank.capacitor.maximum', withCapacitor({ minimum: 3e-11, maximum: 2e-11 })],
  ['tank.capacitor.rotation', withCapacitor({ rotation: 0 })],
  ['tank.capacitor.lossTangent', withCapacitor({ lossTangent: -0.1 })],
  ['tank.capacitor.series', withCapacitor({ series: 0 })],
  ['tank.capacitor.law', withCapacitor({ law: { kind: 'table', angle: [0], capacitance: [1e-12] } })],
  ['tank.capacitor.law', withCapacitor({ law: { kind: 'table', angle: [0, 1], capacitance: [1e-12] } })],
  ['tank.capacitor.law.angle[1]', withCapacitor({ law: { kind: 'table', angle: [1, 0], capacitance: [1e-12, 2e-12] } })],
  ['tank.capacitor.law.capacitance[1]', withCapacitor({ law: { kind: 'table', angle: [0, 1], capacitance: [1e-12, 0] } })],
  ['tank.wiring.length', { ...tank, wiring: { length: -1, diameter: 0.001 } }],
  ['tank.wiring.diameter', { ...tank, wiring: { length: 0.02, diameter: 0 } }],
  ['tank.joints.resistance', { ...tank, joints: { count: 4, resistance: Number.NaN } }],
  ['tank.strayCapacitance', { ...tank, strayCapacitance: -1e-12 }],
  ['tank.detectorReturn', { ...tank, detectorReturn: 0 }],
  ['tank.detectorReturn', { ...tank, detectorCoupling: { kind: 'series-capacitor', capacitance: 1e-12 } }],
  ['tank.aerialCoupling', withoutAerial(tank)],
  ['tank.aerialCoupling.turns', { ...tank, aerialCoupling: { kind: 'tap', turns: 6 } }],
  ['tank.detectorCoupling.turns', { ...tank, detectorCoupling: { kind: 'tap', turns: 0 } }],
  ['tank.detectorCoupling.capacitance', { ...tank, detectorCoupling: { kind: 'series-capacitor', capacitance: 0 }, detectorReturn: 1e5 }],
  ['tank.aerialCoupling', { ...tank, coil: electrical, aerialCoupling: link }],
  ['tank.aerialCoupling.turns', { ...tank, aerialCoupling: { ...link, turns: 0 } }],
  ['tank.aerialCoupling.pitch', { ...tank, aerialCoupling: { ...link, turns: 2, pitch: 0.0005 } }],
  ['tank.aerialCoupling.gap', { ...tank, aerialCoupling: { ...link, gap: Number.NaN } }],
];

describe('what cannot be is refused where it stands, with a cure', () => {
  for (const [path, given] of CASES)
    test(`${path}: ${JSON.stringify(given).length}`, () => {
      try {
        tankModel(given, false);
      } catch (error) {
        expect(error).toBeInstanceOf(GivenError);
        expect((error as GivenError).path).toBe(path);
        expect((error as GivenError).mend.length).toBeGreaterThan(5);
        return;
      }
      expect.fail('nothing was refused');
    });
  test('an aerial beside a coil that is the aerial', () => {
    expect(() => tankModel(tank, true)).toThrow(GivenError);
    expect(() => tankModel(withoutAerial(tank), true)).not.toThrow();
  });
});
