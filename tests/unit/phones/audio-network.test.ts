import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  C,
  coupledWindings,
  type Earpiece,
  Network,
  type PhonesDescription,
  phonesFigures,
  phonesModel,
  powers,
  type Transformer,
} from '#engine';

const common = {
  name: 'any',
  coupling: 'supra-aural',
  coupler: 'IEC 60318-1',
  sensitivity: [{ frequency: 1000, level: 100 }],
  sensitivityAt: '1 V',
  sensitivitySpread: 3,
  ears: 1,
} as const;
const ceramic: Earpiece = { ...common, kind: 'piezo', capacitance: 15e-9, lossTangent: 0.02, leakResistance: 20e6 };
const coil = (resistance: number, inductance: number): Earpiece => ({ ...common, kind: 'magnetic', resistance, inductance });
const transformer: Transformer = {
  ratio: 13,
  primaryInductance: 30,
  primaryResistance: 2000,
  secondaryResistance: 15,
  leakageInductance: 0.3,
  coreLoss: 500e3,
  capacitance: 200e-12,
};

const logarithmic = (low: number, high: number) => fc.double({ min: Math.log(low), max: Math.log(high), noNaN: true }).map(Math.exp);
const anyEarpiece: fc.Arbitrary<Earpiece> = fc.oneof(
  fc
    .record({ capacitance: logarithmic(1e-10, 1e-6), lossTangent: fc.constantFrom(0, 0.02), leakResistance: logarithmic(1e6, 1e9) })
    .map((p) => ({ ...common, kind: 'piezo' as const, ...p })),
  fc
    .record(
      {
        resistance: logarithmic(8, 4000),
        inductance: fc.oneof(fc.constant(0), logarithmic(1e-5, 5)),
        motional: fc.record({
          resistance: logarithmic(10, 1e4),
          inductance: logarithmic(1e-3, 1),
          capacitance: logarithmic(1e-8, 1e-5),
        }),
      },
      { requiredKeys: ['resistance', 'inductance'] },
    )
    .map((p) => ({ ...common, kind: 'magnetic' as const, ...p }) as Earpiece),
);
const anyTransformer: fc.Arbitrary<Transformer> = fc
  .record({
    ratio: logarithmic(0.5, 60),
    primaryInductance: logarithmic(0.5, 100),
    leakage: logarithmic(1e-3, 0.2),
    primaryResistance: logarithmic(10, 5000),
    secondaryResistance: logarithmic(0.1, 500),
    coreLoss: logarithmic(1e4, 1e7),
    capacitance: fc.oneof(fc.constant(0), logarithmic(1e-11, 1e-9)),
  })
  .map(({ leakage, ...t }) => ({ ...t, leakageInductance: leakage * t.primaryInductance }));
const anyPhones: fc.Arbitrary<PhonesDescription> = fc
  .record(
    {
      bypass: fc.oneof(fc.constant(0), logarithmic(1e-11, 1e-8)),
      load: logarithmic(1e3, 1e7),
      choke: fc.record({ inductance: logarithmic(0.5, 50), resistance: logarithmic(50, 5000) }),
      blocking: logarithmic(1e-9, 1e-5),
      transformer: anyTransformer,
      earpiece: anyEarpiece,
    },
    { requiredKeys: ['bypass', 'earpiece'] },
  )
  .map((d) => d as PhonesDescription);

const solve = (d: PhonesDescription, frequency: number) => {
  const network = new Network([...phonesModel(d).elements, { kind: 'current', name: 'detector', a: 'output', b: 'earth', re: 1, im: 0 }]);
  const solution = network.solveAt(frequency);
  expect(solution, `no solution at ${frequency} Hz`).not.toBeNull();
  return { network, solution: solution! };
};

test('rival: the network of parts, solved by nodes, against the ladder in closed form', () => {
  fc.assert(
    fc.property(anyPhones, fc.constantFrom(0, 20, 300, 1000, 3400, 20e3), (d, frequency) => {
      const model = phonesModel(d);
      const { solution } = solve(d, frequency);
      const output = solution.voltage('output');
      const load = model.load(frequency);
      expect(C.abs(C.sub(output, load)) / C.abs(load)).toBeLessThan(1e-6);
      const transfer = C.div(solution.voltage('earpiece'), output);
      expect(C.abs(C.sub(transfer, model.transfer(frequency)))).toBeLessThan(1e-6 * (1 + C.abs(transfer)));
    }),
    { numRuns: 300 },
  );
});

test('identity: the power that goes in at the output is found in the parts', () => {
  fc.assert(
    fc.property(anyPhones, fc.constantFrom(0, 300, 1000, 3400), (d, frequency) => {
      const { network, solution } = solve(d, frequency);
      const all = powers(network, solution, frequency);
      const given = -all.find((p) => p.name === 'detector')!.watts;
      const sum = all.reduce((s, p) => s + p.watts, 0);
      expect(given).toBeGreaterThanOrEqual(0);
      expect(Math.abs(sum)).toBeLessThan(1e-6 * given + 1e-9 * C.abs(solution.voltage('output')));
      for (const p of all) if (p.name !== 'detector') expect(p.watts).toBeGreaterThanOrEqual(-1e-9 * given);
    }),
    { numRuns: 200 },
  );
});

test('limit: a transformer measured as its maker does has the inductances that were given', () => {
  const measure = (earpiece: Earpiece) => {
    const d: PhonesDescription = {
      bypass: 0,
      transformer: { ...transformer, primaryResistance: 1e-6, secondaryResistance: 1e-6, coreLoss: 1e12, capacitance: 0 },
      earpiece,
    };
    return phonesModel(d).load(1000).im / (2 * Math.PI * 1000);
  };
  expect(measure(coil(1e9, 0)), 'secondary open').toBeCloseTo(transformer.primaryInductance, 6);
  expect(measure(coil(1e-6, 0)), 'secondary shorted').toBeCloseTo(transformer.leakageInductance, 6);
});

test('limit: a perfect transformer shows the load times the square of the ratio, and turns the voltage down by the ratio', () => {
  const t: Transformer = {
    ratio: 13,
    primaryInductance: 1e6,
    leakageInductance: 1e-3,
    primaryResistance: 1e-6,
    secondaryResistance: 1e-6,
    coreLoss: 1e12,
    capacitance: 0,
  };
  const model = phonesModel({ bypass: 0, transformer: t, earpiece: coil(600, 0) });
  expect(model.load(1000).re / (13 * 13 * 600)).toBeCloseTo(1, 5);
  expect(C.abs(model.transfer(1000)) * 13).toBeCloseTo(1, 5);
});

test('limit: the open-circuit voltage ratio is the coupling over the turns ratio', () => {
  const model = phonesModel({ bypass: 0, transformer: { ...transformer, primaryResistance: 1e-9 }, earpiece: coil(1e12, 0) });
  expect(C.abs(model.transfer(1000))).toBeCloseTo(coupledWindings(transformer).coupling / transformer.ratio, 9);
});

test('limit: at 0 Hz only resistances are left', () => {
  expect(phonesModel({ bypass: 1e-9, load: 500e3, earpiece: ceramic }).load(0).re).toBeCloseTo(1 / (1 / 500e3 + 1 / 20e6), 3);
  expect(phonesModel({ bypass: 1e-9, choke: { inductance: 5, resistance: 800 }, earpiece: ceramic }).load(0).re).toBeCloseTo(800, 0);
  expect(phonesModel({ bypass: 1e-9, transformer, earpiece: coil(600, 0) }).load(0).re).toBeCloseTo(2000, 9);
  expect(phonesModel({ bypass: 1e-9, earpiece: coil(2000, 1.9) }).load(0).re).toBeCloseTo(2000, 9);
  // a blocking capacitor leaves its insulation, 10 000 s over the capacitance
  expect(phonesModel({ bypass: 1e-9, blocking: 1e-6, transformer, earpiece: coil(600, 0) }).load(0).re).toBeCloseTo(1e10 + 2000, 0);
});

test('limit: choke and piezo resonate where their reactances are equal', () => {
  const model = phonesModel({ bypass: 0, choke: { inductance: 5, resistance: 1 }, earpiece: { ...ceramic, lossTangent: 0 } as Earpiece });
  const resonance = phonesFigures(model).find((f) => f.name === 'phones.resonance')!.value!;
  expect(resonance).toBeCloseTo(1 / (2 * Math.PI * Math.sqrt(5 * 15e-9)), 6);
  // the impedance turns from inductive to capacitive there
  expect(model.load(resonance * 0.99).im).toBeGreaterThan(0);
  expect(model.load(resonance * 1.01).im).toBeLessThan(0);
});
