import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  C,
  couplerThreshold,
  couplingAttenuation,
  type EarCoupling,
  type Earpiece,
  GivenError,
  leakLoss,
  type PhonesDescription,
  phonesFigures,
  phonesModel,
  sensitivityPerMilliwatt,
  sensitivityPerVolt,
} from '#engine';

const ceramic: Earpiece = {
  kind: 'piezo',
  name: 'ceramic',
  coupling: 'plug',
  coupler: 'IEC 60318-4',
  sensitivity: [
    { frequency: 500, level: 97 },
    { frequency: 1000, level: 98 },
    { frequency: 4000, level: 104 },
  ],
  sensitivityAt: '1 V',
  sensitivitySpread: 6,
  ears: 1,
  capacitance: 15e-9,
  lossTangent: 0.02,
  leakResistance: 20e6,
};
const phones = (d: Partial<PhonesDescription> = {}): PhonesDescription => ({ bypass: 1e-9, load: 500e3, earpiece: ceramic, ...d });

test('limit: the sensitivity is met at its points and runs straight in dB against log f between them', () => {
  const { sensitivity } = phonesModel(phones());
  expect(sensitivity(500)).toBeCloseTo(97, 9);
  expect(sensitivity(4000)).toBeCloseTo(104, 9);
  expect(sensitivity(2000)).toBeCloseTo(101, 9);
});

test('limit: beyond the speech band the sensitivity falls by 12 dB per octave, inside it the ends are held', () => {
  const { sensitivity } = phonesModel(phones());
  expect(sensitivity(300)).toBeCloseTo(97, 9);
  expect(sensitivity(150)).toBeCloseTo(85, 9);
  expect(sensitivity(8000)).toBeCloseTo(92, 9);
  const single = phonesModel(phones({ earpiece: { ...ceramic, sensitivity: [{ frequency: 1000, level: 98 }] } }));
  expect(single.sensitivity(3400)).toBeCloseTo(98, 9);
  expect(single.sensitivity(6800)).toBeCloseTo(86, 9);
});

test('identity: per volt and per milliwatt are each other’s way back', () => {
  fc.assert(
    fc.property(fc.double({ min: 40, max: 140, noNaN: true }), fc.double({ min: 1, max: 1e6, noNaN: true }), (s, z) => {
      expect(sensitivityPerMilliwatt(sensitivityPerVolt(s, z), z)).toBeCloseTo(s, 9);
    }),
  );
});

test('limit: at 1 mW the earpiece gives its level per milliwatt', () => {
  const e: Earpiece = {
    kind: 'magnetic',
    name: 'phone',
    coupling: 'supra-aural',
    coupler: 'IEC 60318-1',
    sensitivity: [{ frequency: 1000, level: 102 }],
    sensitivityAt: '1 mW',
    sensitivitySpread: 3,
    ears: 2,
    resistance: 2000,
    inductance: 0,
  };
  const model = phonesModel({ bypass: 0, earpiece: e });
  const volts = Math.sqrt(1e-3 * 2000);
  expect(model.sensitivity(1000) + 20 * Math.log10(volts)).toBeCloseTo(102, 9);
});

test('limit: threshold power and threshold voltage agree on the impedance', () => {
  const figures = phonesFigures(phonesModel(phones()));
  const value = (name: string) => figures.find((f) => f.name === name)!.value!;
  expect(value('phones.thresholdVoltage') ** 2 / value('phones.earpiece.impedance') / value('phones.thresholdPower')).toBeCloseTo(1, 9);
});

describe('coupling to the ear', () => {
  const couplings: readonly EarCoupling[] = ['insert', 'plug', 'supra-aural', 'circumaural', 'open'];

  test('limit: an open earpiece keeps nothing out, none lets noise in louder', () => {
    for (const c of couplings) for (const f of [100, 160, 1000, 8000, 12000]) expect(couplingAttenuation(c, f)).toBeGreaterThanOrEqual(0);
    expect(couplingAttenuation('open', 1000)).toBe(0);
  });
  test('practice: a sealing insert keeps out most, then circumaural, supra-aural and open, in the bass', () => {
    const at = couplings.map((c) => couplingAttenuation(c, 250));
    expect(at[0]).toBeGreaterThan(at[1]!);
    expect(at[1]).toBeGreaterThan(at[3]!);
    expect(at[3]).toBeGreaterThan(at[2]!);
    expect(at[2]).toBeGreaterThan(at[4]!);
  });
  test('limit: the leak takes 3 dB at its corner and 12 dB per octave far below, nothing from a sealed earpiece', () => {
    expect(leakLoss('plug', 400)).toBeCloseTo(3.0103, 4);
    expect(leakLoss('open', 25) - leakLoss('open', 50)).toBeCloseTo(12.04, 2);
    for (const c of ['insert', 'supra-aural', 'circumaural'] as const) expect(leakLoss(c, 160)).toBe(0);
    const model = phonesModel(phones());
    expect(model.threshold(200)).toBeCloseTo(couplerThreshold('IEC 60318-4', 200) + leakLoss('plug', 200), 9);
  });
});

test('practice: a piezo earpiece is about 10 kohm at speech frequencies (common practice, no source)', () => {
  const z = C.abs(phonesModel(phones()).earpieceImpedance(1000));
  expect(z).toBeGreaterThan(5e3);
  expect(z).toBeLessThan(20e3);
});

test('practice: a piezo earpiece needs a path for direct current, such as 500 kohm or several henries (common practice, no source)', () => {
  const silent = (d: PhonesDescription) => phonesModel(d).remarks.some((r) => r.includes('biases itself off'));
  const { load: _, ...bare } = phones();
  expect(silent(bare)).toBe(true);
  expect(silent(phones())).toBe(false);
  expect(silent({ ...bare, choke: { inductance: 5, resistance: 800 } })).toBe(false);
  // behind a blocking capacitor a magnetic earpiece is no path either
  const coil: Earpiece = { ...common(ceramic), kind: 'magnetic', resistance: 2000, inductance: 1.9 };
  expect(silent({ ...bare, earpiece: coil })).toBe(false);
  expect(silent({ ...bare, blocking: 1e-6, earpiece: coil })).toBe(true);
});

test('practice: several henries beside a piezo carry the direct current and leave speech its voltage (common practice, no source)', () => {
  const { load: _, ...bare } = phones();
  const choke = phonesModel({ ...bare, choke: { inductance: 5, resistance: 800 } });
  const none = phonesModel(bare);
  expect(choke.load(0).re).toBeLessThan(1000);
  expect(C.abs(choke.load(1000))).toBeGreaterThan(0.8 * C.abs(none.load(1000)));
});

test('remarks: a blocking capacitor that starves the bass, and a resistor that a winding shorts', () => {
  const coil: Earpiece = {
    ...common(ceramic),
    coupling: 'supra-aural',
    coupler: 'IEC 60318-1',
    kind: 'magnetic',
    resistance: 600,
    inductance: 0,
  };
  const has = (d: PhonesDescription, words: string) => phonesModel(d).remarks.some((r) => r.includes(words));
  expect(has(phones({ earpiece: coil, blocking: 100e-9 }), 'blocking capacitor')).toBe(true);
  expect(has(phones({ earpiece: coil, blocking: 10e-6 }), 'blocking capacitor')).toBe(false);
  expect(has(phones({ earpiece: coil }), 'does nothing for the direct current')).toBe(true);
  expect(has(phones(), 'does nothing for the direct current')).toBe(false);
  expect(has(phones({ load: 2000 }), 'takes most of the audio power')).toBe(true);
});

test('every figure has a unique name, a finite value or null, and a source', () => {
  const transformer = {
    ratio: 13,
    primaryInductance: 30,
    primaryResistance: 2000,
    secondaryResistance: 15,
    leakageInductance: 0.3,
    coreLoss: 500e3,
    capacitance: 200e-12,
  };
  for (const d of [phones(), phones({ transformer }), phones({ choke: { inductance: 5, resistance: 800 }, blocking: 1e-7 })]) {
    const figures = phonesFigures(phonesModel(d));
    expect(new Set(figures.map((f) => f.name)).size).toBe(figures.length);
    for (const f of figures) {
      expect(f.value === null || Number.isFinite(f.value), f.name).toBe(true);
      expect(f.working.source.length, f.name).toBeGreaterThan(0);
    }
  }
});

describe('what cannot be is refused with its path', () => {
  const transformer = {
    ratio: 13,
    primaryInductance: 30,
    primaryResistance: 2000,
    secondaryResistance: 15,
    leakageInductance: 0.3,
    coreLoss: 500e3,
    capacitance: 0,
  };
  const wrong: readonly (readonly [string, PhonesDescription])[] = [
    ['phones.bypass', phones({ bypass: -1e-9 })],
    ['phones.load', phones({ load: 0 })],
    ['phones.blocking', phones({ blocking: Number.NaN })],
    ['phones.choke.inductance', phones({ choke: { inductance: 0, resistance: 1 } })],
    ['phones.choke.resistance', phones({ choke: { inductance: 1, resistance: -1 } })],
    ['phones.transformer.ratio', phones({ transformer: { ...transformer, ratio: 0 } })],
    ['phones.transformer.leakageInductance', phones({ transformer: { ...transformer, leakageInductance: 30 } })],
    ['phones.transformer.leakageInductance', phones({ transformer: { ...transformer, leakageInductance: 0 } })],
    ['phones.earpiece.capacitance', phones({ earpiece: { ...ceramic, capacitance: 0 } as Earpiece })],
    ['phones.earpiece.resistance', phones({ earpiece: { ...common(ceramic), kind: 'magnetic', resistance: 0, inductance: 1 } })],
    ['phones.earpiece.sensitivity', phones({ earpiece: { ...ceramic, sensitivity: [] } })],
    ['phones.earpiece.sensitivity[0].level', phones({ earpiece: { ...ceramic, sensitivity: [{ frequency: 1000, level: 1e6 }] } })],
    [
      'phones.earpiece.sensitivity[1].frequency',
      phones({
        earpiece: {
          ...ceramic,
          sensitivity: [
            { frequency: 1000, level: 98 },
            { frequency: 500, level: 97 },
          ],
        },
      }),
    ],
  ];
  for (const [path, d] of wrong)
    test(path, () => {
      let thrown: unknown;
      try {
        phonesModel(d);
      } catch (e) {
        thrown = e;
      }
      expect(thrown).toBeInstanceOf(GivenError);
      expect((thrown as GivenError).path).toBe(path);
    });
});

function common(e: Earpiece) {
  const { name, coupling, coupler, sensitivity, sensitivityAt, sensitivitySpread, ears } = e;
  return { name, coupling, coupler, sensitivity, sensitivityAt, sensitivitySpread, ears };
}
