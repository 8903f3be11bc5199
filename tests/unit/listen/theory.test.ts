import { describe, expect, test } from 'vitest';
import {
  assemble,
  bestDial,
  type CircuitInTime,
  type DescribingFunction,
  detectorModel,
  EARTH,
  envelopeRate,
  listen,
  openResponse,
  type Reception,
  type SetDescription,
  SetInTime,
  SOUND_RATE,
  standAt,
  Tuned,
  weaken,
} from '#engine';
import { listener, place, set, station } from '../chain/base-set.ts';
import { resistorLoad } from './reference-circuits.ts';
import { amTone, decibels, fmTone, harmonics } from './signals.ts';

/** Bessel function of the first kind, by its integral (Abramowitz & Stegun 9.1.21); the trapezoidal rule is exact to rounding for a periodic function. */
function besselJ(n: number, x: number): number {
  const points = 400;
  let sum = 0;
  for (let k = 0; k < points; k++) {
    const t = (2 * Math.PI * (k + 0.5)) / points;
    sum += Math.cos(n * t - x * Math.sin(t)) / points;
  }
  return sum;
}

/** A tenth of a second of sound, once the modulation has been on for longer than anything in the set lasts. */
function steady(s: SetInTime): Float64Array {
  s.process(new Float64Array(9600));
  const x = new Float64Array(4800);
  s.process(x);
  return x;
}

/** A square law that draws no radio current: what is on the tank is linear theory alone. */
const squareLaw: DescribingFunction = {
  at(a, _v, out) {
    out.set([1e-6 * a * a, 0, 2e-6 * a, 0, 0, 0]);
  },
  current: (v) => 2e-6 * v * v,
};

/** A tank through a resistor, Q about 150 and half bandwidth about 330 kHz. */
const tankCircuit = (law: DescribingFunction): CircuitInTime => ({
  laws: [law],
  radio: () => ({
    elements: [
      { kind: 'resistor', name: 'source', a: 'source', b: 'top', resistance: 20e3 },
      { kind: 'capacitor', name: 'tuning', a: 'top', b: EARTH, capacitance: 25e-12 },
      { kind: 'windings', name: 'coil', windings: [{ name: 'coil', a: 'top', b: 'low' }], inductance: [[100e-9]] },
      { kind: 'resistor', name: 'copper', a: 'low', b: EARTH, resistance: 0.1 },
      { kind: 'capacitor', name: 'bypass', a: 'return', b: EARTH, capacitance: 1e-9 },
    ],
    source: { node: 'source', impedance: null },
    ports: [{ from: 'top', to: 'return' }],
  }),
  audio: resistorLoad(1e3, 1e-12),
});

describe('rival: all-sideband theory, Bessel sidebands through the exact transfer, for a square law: 0.05 dB', () => {
  const f0 = 100e6;
  for (const [tone, deviation, detuning] of [
    [1000, 75e3, 0.2e6],
    [5000, 75e3, -0.15e6],
    [15000, 75e3, 0.2e6],
    [15000, 40e3, 0.05e6],
    [3000, 10e3, 0.4e6],
  ] as const)
    test(`tone ${tone} Hz, deviation ${deviation / 1e3} kHz, ${detuning / 1e3} kHz off`, () => {
      const carrier = f0 + detuning;
      const circuit = tankCircuit(squareLaw);
      const radio = circuit.radio(0, carrier);
      const index = deviation / tone;
      const most = Math.ceil(index + 40);
      const lines = Array.from({ length: 2 * most + 1 }, (_, k) => {
        const n = k - most;
        const { voltage } = openResponse(radio, carrier + n * tone);
        const j = besselJ(n, index) * 0.01;
        return { re: j * voltage.re, im: j * voltage.im };
      });
      // harmonic k of |v|^2: 2 sum of v_(n + k) conj v_n
      const expected = [0, 1, 2, 3].map((k) => {
        let re = 0;
        let im = 0;
        for (let n = 0; n + k < lines.length; n++) {
          const a = lines[n + k]!;
          const b = lines[n]!;
          re += a.re * b.re + a.im * b.im;
          im += a.im * b.re - a.re * b.im;
        }
        return (k === 0 ? 1 : 2) * Math.hypot(re, im) * 1e-6 * 1e3;
      });
      const rate = 480_000;
      const s = new SetInTime(
        circuit,
        [{ name: 'a', frequency: carrier, emf: 0.01 / Math.SQRT2, halfWidth: deviation + 2 * tone, source: fmTone(rate, tone, deviation) }],
        { reference: carrier, rate, angle: 0 },
      );
      const x = steady(s);
      const got = harmonics(x, SOUND_RATE, tone, Math.min(3, Math.floor(20e3 / tone)));
      expect(Math.abs(decibels(got[0]!, expected[0]!))).toBeLessThan(0.005);
      expect(Math.abs(decibels(got[1]!, expected[1]!))).toBeLessThan(0.05);
      for (let k = 2; k < got.length; k++)
        if (expected[k]! > 3e-3 * expected[1]!) expect(Math.abs(decibels(got[k]!, expected[k]!))).toBeLessThan(0.05);
    });
});

describe('rival: levels, in the quasi-static limit: 0.05 dB', () => {
  const fm: Reception = standAt(place(), assemble(set, listener));
  for (const gain of [-50, -20, 0, 15])
    for (const flank of [0, 1])
      test(`FM, ${gain} dB, flank ${flank}`, () => {
        const r = weaken(fm, 0, gain);
        const dial = bestDial(r, 0);
        if ('missing' in dial) throw new Error('must tune');
        const { angle } = dial.points[flank]!;
        const tone = 1000;
        const levels = new Tuned(r, 0, angle).tone(75e3);
        const { set: s } = listen(r, { station: 0, angle, broadcast: (_, rate) => ({ source: fmTone(rate, tone, 75e3), turned: false }) });
        const x = steady(s);
        const got = harmonics(x, SOUND_RATE, tone, 3);
        expect(levels.converged).toBe(true);
        expect(s.report().failures).toBe(0);
        expect(got[0]! / levels.meanOutput).toBeCloseTo(1, 3);
        expect(Math.abs(decibels(got[1]!, levels.earpiece[1]! * Math.SQRT2))).toBeLessThan(0.05);
        if (levels.secondHarmonic > 1e-3) expect(Math.abs(decibels(got[2]!, levels.earpiece[2]! * Math.SQRT2))).toBeLessThan(0.3);
      });
});

describe('diagonal clipping', () => {
  /** A junction small beside its voltages, from a source that does not feel it: a detector of peaks with a load R C. */
  const law = detectorModel({
    kind: 'junction',
    saturationCurrent: 1e-6,
    ideality: 1,
    seriesResistance: 0,
    junctionCapacitance: 0,
    nominalTemperature: 300,
    temperature: 300,
  }).law;
  const tone = 1000;
  const resistance = 100e3;
  /** w R C = 1, so the boundary is at m = 1/sqrt(2) */
  const capacitance = 1 / (2 * Math.PI * tone * resistance);
  const boundary = Math.SQRT1_2;
  const circuit: CircuitInTime = {
    laws: [law],
    radio: () => ({
      elements: [
        { kind: 'resistor', name: 'source', a: 'source', b: 'top', resistance: 10 },
        { kind: 'capacitor', name: 'tuning', a: 'top', b: EARTH, capacitance: 25.33e-9 },
        { kind: 'windings', name: 'coil', windings: [{ name: 'coil', a: 'top', b: EARTH }], inductance: [[1e-6]] },
      ],
      source: { node: 'source', impedance: null },
      ports: [{ from: 'top', to: EARTH }],
    }),
    audio: resistorLoad(resistance, capacitance),
  };
  const distortion = (depth: number): number => {
    const rate = 96_000;
    const s = new SetInTime(
      circuit,
      [{ name: 'a', frequency: 1e6, emf: 20 / Math.SQRT2, halfWidth: 5e3, source: amTone(rate, tone, depth) }],
      { reference: 1e6, rate, angle: 0 },
    );
    const x = steady(s);
    const h = harmonics(x, SOUND_RATE, tone, 12);
    expect(s.report().failures).toBe(0);
    return Math.hypot(...h.slice(2)) / h[1]!;
  };
  /** The ideal: the output follows the envelope, or falls along its own exponential where that is slower. */
  const ideal = (depth: number): number => {
    const steps = 48_000;
    let v = 0;
    const x = new Float64Array(steps);
    for (let period = 0; period < 4; period++)
      for (let k = 0; k < steps; k++) {
        v = Math.max(v * Math.exp((-2 * Math.PI) / steps), 1 + depth * Math.cos((2 * Math.PI * k) / steps));
        x[k] = v;
      }
    const h = harmonics(x, steps, 1, 12);
    return Math.hypot(...h.slice(2)) / h[1]!;
  };
  test("published: no clipping below m = 1/sqrt(1 + (w R C)^2), Terman, Radio Engineers' Handbook (1943), sec. 7 (from memory)", () => {
    // one part in a hundred below the boundary the ideal is clean, as is the junction but for what its knee does
    expect(ideal(0.99 * boundary)).toBeLessThan(1e-6);
    expect(distortion(0.9 * boundary)).toBeLessThan(2e-3);
  });
  test('rival: an ideal detector of peaks, above the boundary', () => {
    // close above it the knee of the junction still counts
    for (const [depth, within] of [
      [0.8, 0.1],
      [0.9, 0.05],
      [0.98, 0.05],
    ] as const)
      expect(Math.abs(distortion(depth) / ideal(depth) - 1), `m = ${depth}`).toBeLessThan(within);
    expect(distortion(0.8)).toBeGreaterThan(10 * distortion(0.9 * boundary));
  });
  test('limit: with a tenth of the capacitance the same depth is clean', () => {
    const quick: CircuitInTime = { ...circuit, audio: resistorLoad(resistance, capacitance / 10) };
    const rate = 96_000;
    const s = new SetInTime(quick, [{ name: 'a', frequency: 1e6, emf: 20 / Math.SQRT2, halfWidth: 5e3, source: amTone(rate, tone, 0.9) }], {
      reference: 1e6,
      rate,
      angle: 0,
    });
    const x = steady(s);
    const h = harmonics(x, SOUND_RATE, tone, 12);
    expect(Math.hypot(...h.slice(2)) / h[1]!).toBeLessThan(5e-3);
  });
});

test('the least rates for one station', () => {
  expect(envelopeRate([{ offset: 0, halfWidth: 128e3, kind: 'fm' }])).toBe(480_000);
  expect(envelopeRate([{ offset: 0, halfWidth: 4500, kind: 'am' }])).toBe(96_000);
  expect(station().frequency).toBe(98e6);
});

describe('rival: levels, a frame aerial on medium wave', () => {
  /** slow beside the tank's loaded half bandwidth of tens of kilohertz: levels let the detector load it as if all stood still [Hz] */
  const TONE = 100;
  const frame: SetDescription = {
    ...set,
    aerial: { kind: 'coil', axis: { kind: 'horizontal', plane: Math.PI / 2 } },
    tank: {
      coil: {
        kind: 'geometry',
        turns: 20,
        innerDiameter: 0.3,
        wireDiameter: 0.7e-3,
        pitch: 3e-3,
        metal: 'copper',
        surfaceFactor: 1,
        leadLength: 0.02,
      },
      capacitor: {
        minimum: 15e-12,
        maximum: 500e-12,
        rotation: Math.PI,
        law: { kind: 'capacitance-linear' },
        lossTangent: 3e-4,
        contactResistance: 0.03,
        leadInductance: 20e-9,
      },
      wiring: { length: 0.1, diameter: 1e-3 },
      joints: { count: 4, resistance: 0.5e-3 },
      strayCapacitance: 5e-12,
      detectorCoupling: { kind: 'direct' },
    },
  };
  const r = standAt(
    place(
      station({
        frequency: 1e6,
        power: 50e3,
        polarisation: 'vertical',
        modulation: { kind: 'am', depth: 0.8 },
        position: { distance: 8000, bearing: Math.PI / 2 },
      }),
    ),
    assemble(frame, { ...listener, programme: { ...listener.programme, tone: TONE } }),
  );
  // a stronger signal shuts the detector but for the peaks and lays the tank's own bandwidth bare, 1.7 kHz, over which levels take its impedance to
  // stand still: there they part by 0.06 dB, and no quasi-static limit is left to compare in
  for (const gain of [0, 20])
    test(`AM, ${gain} dB`, () => {
      const weak = weaken(r, 0, gain);
      const dial = bestDial(weak, 0);
      if ('missing' in dial) throw new Error('must tune');
      const { angle } = dial.points[0]!;
      const levels = new Tuned(weak, 0, angle).tone(0.5);
      const { set: s, rate } = listen(weak, {
        station: 0,
        angle,
        broadcast: (_, rate) => ({ source: amTone(rate, TONE, 0.5), turned: false }),
      });
      const got = harmonics(steady(s), SOUND_RATE, TONE, 3);
      expect(rate).toBe(96_000);
      expect(s.report().failures).toBe(0);
      expect(got[0]! / levels.meanOutput).toBeCloseTo(1, 2);
      expect(Math.abs(decibels(got[1]!, levels.earpiece[1]! * Math.SQRT2))).toBeLessThan(0.05);
    });
});
