import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import {
  type AerialAt,
  type Arrival,
  aerialModel,
  arrivalAxes,
  C,
  coaxialRingMutual,
  type LoopAxis,
  loopInductance,
  ringSum,
  type SeparateAerial,
  SPEED_OF_LIGHT,
  smallLoopEffectiveLength,
  straightWireResistance,
} from '#engine';
import { efficiency, meanGain } from './sphere.ts';

type Loop = Extract<SeparateAerial, { kind: 'loop' }>;
const loop = (changes: Partial<Loop> = {}): Loop => ({
  kind: 'loop',
  diameter: 0.1,
  turns: 1,
  wireDiameter: 0.004,
  windingLength: 0.004,
  metal: 'copper',
  axis: { kind: 'horizontal', plane: 0 },
  ...changes,
});
const hear = (axis: LoopAxis, arrival: Arrival) => smallLoopEffectiveLength(0.02, 1e8, axis, arrival);
const size = ({ horizontal, vertical }: Pick<AerialAt, 'horizontal' | 'vertical'>) => Math.hypot(C.abs(horizontal), C.abs(vertical));
const FULL = (2 * Math.PI * 1e8 * 0.02) / SPEED_OF_LIGHT;

describe('what a small loop hears', () => {
  test('upright, it hears vertical fields along its plane and nothing across it', () => {
    const upright = { kind: 'horizontal', plane: 0.6 } as const;
    expect(C.abs(hear(upright, { azimuth: 0.6, elevation: 0 }).vertical)).toBeCloseTo(FULL, 12);
    expect(size(hear(upright, { azimuth: 0.6 + Math.PI / 2, elevation: 0 }))).toBeCloseTo(0, 12);
    for (const a of [0.3, 1, 2])
      expect(C.abs(hear(upright, { azimuth: 0.6 + a, elevation: 0 }).vertical)).toBeCloseTo(FULL * Math.abs(Math.cos(a)), 12);
  });
  test('upright, it hears a horizontal field that comes from above across its plane, by the sine of the elevation', () => {
    const h = hear({ kind: 'horizontal', plane: 0 }, { azimuth: Math.PI / 2, elevation: 0.5 });
    expect(C.abs(h.horizontal)).toBeCloseTo(FULL * Math.sin(0.5), 12);
    expect(C.abs(h.vertical)).toBeCloseTo(0, 12);
  });
  test('lying, it hears horizontal fields alike all round, never vertical ones, nothing from overhead', () => {
    for (const azimuth of [0, 1, 3, 5]) {
      const h = hear({ kind: 'vertical' }, { azimuth, elevation: 0.2 });
      expect(h.horizontal.im).toBeCloseTo(FULL * Math.cos(0.2), 12);
      expect(C.abs(h.vertical)).toBeCloseTo(0, 12);
    }
    expect(size(hear({ kind: 'vertical' }, { azimuth: 1, elevation: Math.PI / 2 }))).toBeCloseTo(0, 12);
  });
  test('rival: flux of the wave through the turns, B = E/c at right angles to field and ray', () => {
    const arrival = { azimuth: 2.2, elevation: 0.7 };
    const axes = arrivalAxes(arrival);
    const axis = [Math.cos(0.9), -Math.sin(0.9), 0] as const;
    const cross = (a: readonly number[], b: readonly number[]) => [
      a[1]! * b[2]! - a[2]! * b[1]!,
      a[2]! * b[0]! - a[0]! * b[2]!,
      a[0]! * b[1]! - a[1]! * b[0]!,
    ];
    const h = hear({ kind: 'horizontal', plane: 0.9 }, arrival);
    for (const part of ['horizontal', 'vertical'] as const) {
      // the ray runs away from the mast, -toward; |V| = w N A |B . n|
      const b = cross(
        axes.toward.map((v) => -v),
        axes[part],
      ).map((v) => v / SPEED_OF_LIGHT);
      const flux = b.reduce((s, v, i) => s + v * axis[i]!, 0) * 0.02;
      expect(C.abs(h[part])).toBeCloseTo(Math.abs(2 * Math.PI * 1e8 * flux), 12);
    }
  });
  test('identity: mean gain over the sphere is the efficiency', () => {
    for (const l of [loop(), loop({ turns: 4, windingLength: 0.05, axis: { kind: 'vertical' } })]) {
      const model = aerialModel(l);
      expect(meanGain(model, 60e6, 'sphere') / efficiency(model, 60e6)).toBeCloseTo(1, 8);
    }
  });
});

describe('its impedance', () => {
  test('rival: ring sums of the coil stage, and the published ones (reference/coils.json, coil-ringsum-hf)', () => {
    expect(loopInductance(6, 0.25, 0.0005, 0.01) / ringSum(0.25, 0.0005, 0.01, 6, 'surface').of(6)).toBeCloseTo(1, 9);
    const entries = JSON.parse(readFileSync(new URL('../../../reference/coils.json', import.meta.url), 'utf8')) as {
      id: string;
      inputs: Record<'N' | 'D_mean' | 'd_wire' | 'pitch', { value: number }>;
      expected: { value: number };
    }[];
    const rows = entries.filter((e) => e.id.startsWith('coil-ringsum-hf-'));
    expect(rows.length).toBeGreaterThan(3);
    for (const { id, inputs, expected } of rows) {
      const got = loopInductance(inputs.N.value, inputs.D_mean.value / 2, inputs.d_wire.value / 2, inputs.pitch.value);
      expect(got / expected.value, id).toBeCloseTo(1, 7);
    }
  });
  test('limit: two far turns are two loops, two near ones nearly four', () => {
    const one = loopInductance(1, 0.1, 0.0005, 0);
    expect(loopInductance(2, 0.1, 0.0005, 5) / one).toBeCloseTo(2, 4);
    expect(loopInductance(2, 0.1, 0.0005, 0.002)).toBeCloseTo(2 * one + 2 * coaxialRingMutual(0.1, 0.1, 0.002), 12);
  });
  test('parts of a turn lie between whole ones', () => {
    const l = [3, 3.25, 3.5, 3.75, 4].map((n) => loopInductance(n, 0.1, 0.0005, 0.01));
    for (let i = 1; i < l.length; i++) expect(l[i]).toBeGreaterThan(l[i - 1]!);
  });
  test('limit: far below resonance the loss is that of the wire, the reactance w L', () => {
    const a = aerialModel(loop()).at(1e6, { azimuth: 0, elevation: 0 });
    expect(a.lossResistance / (Math.PI * 0.1 * straightWireResistance('copper', 0.004, 1e6))).toBeCloseTo(1, 4);
    expect(a.impedance.im / (2 * Math.PI * 1e6 * loopInductance(1, 0.05, 0.002, 0))).toBeCloseTo(1, 4);
  });
  test('practice: a one-turn loop 10 cm across of thick wire resonates in the FM band with about 12 pF (common practice, no source)', () => {
    const x = aerialModel(loop()).at(98e6, { azimuth: 0, elevation: 0 }).impedance.im;
    const c = 1 / (2 * Math.PI * 98e6 * x);
    expect(c).toBeGreaterThan(9e-12);
    expect(c).toBeLessThan(15e-12);
  });
  test('it says where it is no longer small, and where crowding is left out', () => {
    expect(aerialModel(loop()).remarks(98e6)).toEqual([]);
    expect(
      aerialModel(loop({ diameter: 0.4 }))
        .remarks(98e6)
        .join(),
    ).toContain('small loop');
    const frame = loop({ diameter: 1, turns: 12, wireDiameter: 0.001, windingLength: 0.06 });
    expect(aerialModel(frame).remarks(0.9e6)).toEqual([]);
    expect(aerialModel(frame).remarks(3e6).join()).toContain('resonance');
    expect(
      aerialModel(loop({ turns: 4, windingLength: 0.02 }))
        .remarks(30e6)
        .join(),
    ).toContain('crowding');
  });
  test('finite at and beyond half a wave around', () => {
    for (const f of [450e6, 477e6, 480e6, 900e6, 954.26e6]) {
      const a = aerialModel(loop()).at(f, { azimuth: 0, elevation: 0 });
      for (const v of [a.impedance.re, a.impedance.im, a.vertical.im]) expect(Number.isFinite(v)).toBe(true);
    }
  });
});
