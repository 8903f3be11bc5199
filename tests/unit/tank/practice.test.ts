import { describe, expect, test } from 'vitest';
import { type CoilGeometry, dialSetting, type TankDescription, tankModel, tuningRange, unloadedQ, type VariableCapacitor } from '#engine';
import { airVariable, coil, tank } from './described-tank.ts';

/** The tank alone but for what a detector's holder and a hand add. */
const direct: TankDescription = {
  ...tank,
  joints: { count: 4, resistance: 0.0005 },
  aerialCoupling: { kind: 'direct' },
  detectorCoupling: { kind: 'direct' },
};
/** Q where the tank stands at 98 MHz. */
function qAt98(d: TankDescription): number {
  const m = tankModel(d, false);
  const { angle } = dialSetting(m, 98e6);
  if (angle === null) throw new Error('does not tune');
  return unloadedQ(m, 98e6, angle)!;
}
const with_ = (over: Partial<CoilGeometry>): TankDescription => ({ ...direct, coil: { ...coil, ...over } });

describe('practice: common practice, no source', () => {
  test('coils of 1 mm wire, 10 to 20 mm across, 5 to 6 turns, reach the FM band with a small air variable', () => {
    for (const [turns, innerDiameter, pitch] of [
      [5, 0.01, 0.002],
      [6, 0.01, 0.002],
      [5, 0.012, 0.0025],
      [6, 0.012, 0.003],
      [5, 0.015, 0.004],
      [5, 0.02, 0.008],
    ] as const) {
      const { lowest, highest } = tuningRange(tankModel(with_({ turns, innerDiameter, pitch }), false));
      const name = `${turns} turns, ${innerDiameter * 1e3} mm, pitch ${pitch * 1e3} mm: ${lowest! / 1e6} to ${highest! / 1e6} MHz`;
      // some part of the band at least, and the middle of it
      expect(lowest!, name).toBeLessThan(98e6);
      expect(highest!, name).toBeGreaterThan(98e6);
    }
  });
  test('a one-turn loop 10 cm across, of thick wire or soft tube, reaches it with about 12 pF', () => {
    for (const wireDiameter of [0.003, 0.004, 0.006]) {
      const loop = with_({ turns: 1, innerDiameter: 0.1 - wireDiameter, wireDiameter, pitch: 2 * wireDiameter, leadLength: 0.01 });
      const m = tankModel({ ...loop, strayCapacitance: 1e-12 }, false);
      const at98 = 1 / ((2 * Math.PI * 98e6) ** 2 * m.inductance);
      expect(at98, `${wireDiameter}`).toBeGreaterThan(8e-12);
      expect(at98, `${wireDiameter}`).toBeLessThan(16e-12);
    }
  });
  test('short leads, thick wire and bright joints raise Q', () => {
    const base = qAt98(direct);
    expect(qAt98(with_({ leadLength: 0.003 }))).toBeGreaterThan(base);
    expect(qAt98({ ...direct, wiring: { length: 0.06, diameter: 0.001 } })).toBeLessThan(base);
    expect(qAt98({ ...direct, wiring: { length: 0.06, diameter: 0.003 } })).toBeGreaterThan(
      qAt98({ ...direct, wiring: { length: 0.06, diameter: 0.0005 } }),
    );
    // same mean diameter and pitch: up to half the pitch thicker is better
    expect(qAt98(with_({ innerDiameter: 0.0105, wireDiameter: 0.0005 }))).toBeLessThan(base);
    expect(qAt98({ ...direct, joints: { count: 4, resistance: 0.01 } })).toBeLessThan(0.92 * base);
    expect(qAt98(with_({ surfaceFactor: 1.3 }))).toBeLessThan(0.9 * base);
    expect(qAt98(with_({ metal: 'brass' }))).toBeLessThan(0.7 * base);
  });
  test('the air variable beats the film one', () => {
    const film: VariableCapacitor = { ...airVariable, lossTangent: 0.003, contactResistance: 0.15 };
    expect(qAt98({ ...direct, capacitor: film })).toBeLessThan(0.75 * qAt98(direct));
  });
  test('a hand-wound coil has a Q of some hundreds, and a few pF more detune it by megahertz', () => {
    const q = qAt98(direct);
    expect(q).toBeGreaterThan(200);
    expect(q).toBeLessThan(700);
    const m = tankModel(direct, false);
    const moved = tuningRange(m).highest! - tuningRange(m, { detector: 1e-12 }).highest!;
    expect(moved).toBeGreaterThan(1e6);
  });
});
