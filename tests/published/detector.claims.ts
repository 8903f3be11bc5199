import {
  availableThermalNoisePower,
  brent,
  capacitanceLoss,
  crossoverPower,
  type DetectorDescription,
  type DetectorModel,
  detectorModel,
  FUNDAMENTAL,
  MEAN,
  noiseEquivalentPower,
  tangentialSensitivity,
  thermalNoiseVoltageDensity,
  thermalVoltage,
  voltageSensitivity,
} from '#engine';
import type { Claim, Comparison, LeftOut } from './claim.ts';

const BESSEL = 'exact Bessel relation';
const out = new Float64Array(6);

function junction(saturationCurrent: number, ideality: number, temperature: number, seriesResistance = 0): DetectorModel {
  return detectorModel({
    kind: 'junction',
    saturationCurrent,
    ideality,
    seriesResistance,
    junctionCapacitance: 0,
    nominalTemperature: temperature,
    temperature,
  });
}
/** n Vt = 1 V and Is = 1 A at this temperature and ideality: the tables without dimensions. */
const UNIT = junction(1, 20, 0.05 / thermalVoltage(1));

/** Output voltage into a load [ohm] under a sinusoid. */
function outputInto({ law }: DetectorModel, amplitude: number, load = Number.POSITIVE_INFINITY): number {
  return brent(
    (v) => {
      law.at(amplitude, v, out);
      return out[MEAN]! - v / load;
    },
    -amplitude,
    amplitude,
  )!;
}
/** RF resistance at an output voltage [ohm]. */
function radioResistance({ law }: DetectorModel, amplitude: number, output: number): number {
  law.at(amplitude, output, out);
  return amplitude / out[FUNDAMENTAL]!;
}
const weakOf = (m: DetectorModel) => ({ resistance: m.zeroBiasResistance, currentSensitivity: m.currentSensitivity });

const row = (what: string, got: number, expected: number, rel: number): Comparison => ({ what, got, expected, tolerance: { rel } });
/** Each of a list of inputs against its place in a list of expected values. */
const each = (what: string, inputs: readonly number[], expected: readonly number[], rel: number, f: (x: number, k: number) => number) =>
  inputs.map((x, k) => row(`${what} at ${x}`, f(x, k), expected[k]!, rel));

const channelAt = (change: Partial<Extract<DetectorDescription, { kind: 'channel' }>>): DetectorModel =>
  detectorModel({
    kind: 'channel',
    threshold: 0,
    transconductanceFactor: 1e-3,
    slopeFactor: 1,
    gateDrive: 1,
    gateBias: 0,
    gateCapacitance: 0,
    drainCapacitance: 0,
    seriesResistance: 0,
    temperature: 300,
    ...change,
  });
/** Open-circuit output in the limit of small signals, brought to the amplitude asked for by the square law. */
const squareLawOutput = (m: DetectorModel, amplitude: number): number => outputInto(m, 1e-5) * (amplitude / 1e-5) ** 2;

export const claims: readonly Claim[] = [
  {
    figure: 'detector, current sensitivity at zero bias',
    against: '1/(2 n Vt)',
    errorUnit: '%',
    file: 'detect-hear',
    ids: /^DET-beta-/,
    check: (e) => [row('beta', junction(1e-6, e.inputs.n, e.inputs.T_K).currentSensitivity, e.expected.beta_A_per_W, 1e-6)],
  },
  {
    figure: 'detector, resistance at zero bias',
    against: 'n Vt/Is',
    errorUnit: '%',
    file: 'detect-hear',
    ids: /^DET-Rj-/,
    check: (e) => [row('Rj', junction(e.inputs.Is_A, e.inputs.n, e.inputs.T_K).zeroBiasResistance, e.expected.Rj_ohm, 1e-6)],
  },
  {
    figure: 'detector, resistance at zero bias',
    against: 'n Vt/Is',
    errorUnit: '%',
    file: 'detect-hear',
    ids: /^DIODE-1N34A-disagreement$/,
    check: (e) =>
      (e.expected.cards as { Is: number; n: number }[]).map((card, k) =>
        row(`card ${k + 1}`, junction(card.Is, card.n, 300).zeroBiasResistance, e.expected.Rj_300K_ohm[k], 1e-6),
      ),
  },
  {
    figure: 'detector, open-circuit voltage sensitivity',
    against: '1/(2 Is)',
    errorUnit: '%',
    file: 'detect-hear',
    ids: /^DET-gamma-oc$/,
    check: (e) =>
      // printed to eight figures
      each('gamma', e.inputs.Is_A, e.expected.gamma_V_per_W, 2e-8, (i, k) =>
        voltageSensitivity(weakOf(junction(i, 1 + k / 10, 290 + 5 * k))),
      ),
  },
  {
    figure: 'detector, open-circuit voltage sensitivity',
    against: "handbook line, rounded to two figures and 4 % above theory by the record's own note",
    errorUnit: '%',
    file: 'detect-hear',
    ids: /^DET-gamma-AN969$/,
    check: (e) => {
      const gamma = voltageSensitivity(weakOf(junction(e.inputs.Is_A, 1, 300)));
      return [row('exact theory', gamma, e.expected.exact_1_over_2Is, 1e-8), row('printed line', gamma, e.expected.gamma_V_per_W, 0.05)];
    },
  },
  {
    figure: 'detector, loss in junction capacitance',
    against: 'Cowley & Sorensen, Uhlir',
    errorUnit: '%',
    file: 'detect-hear',
    ids: /^DET-Cj-/,
    check: (e) => {
      const m = junction(e.inputs.Is_A, e.inputs.n, e.inputs.T_K);
      const loss = (f: number) => capacitanceLoss(f, e.inputs.Cj_F, e.inputs.Rs_ohm, m.zeroBiasResistance);
      return [
        ...each('factor', e.inputs.f_Hz, e.expected.factor, 1e-6, loss),
        ...each('w2C2RsRj', e.inputs.f_Hz, e.expected.w2C2RsRj, 1e-6, (f) => 1 / loss(f) - 1),
        ...each('gamma', e.inputs.f_Hz, e.expected.gamma_V_per_W, 1e-6, (f) => voltageSensitivity(weakOf(m)) * loss(f)),
      ];
    },
  },
  {
    figure: 'detector output, weak signal into a load',
    against: 'RL/(RL + Rj)',
    errorUnit: '%',
    file: 'detect-hear',
    ids: /^DET-load$/,
    check: (e) => {
      const m = junction(5e-6, 1.05, 300);
      const open = outputInto(m, 1e-6);
      return each('factor', e.inputs.RL_ohm, e.expected.factor, 1e-6, (load) => outputInto(m, 1e-6, load) / open);
    },
  },
  {
    figure: 'detector output, open circuit',
    against: BESSEL,
    errorUnit: '%',
    file: 'detect-hear',
    ids: /^DET-bessel-oc-table$/,
    check: (e) => [
      ...each('Vo/nVt', e.inputs.x, e.expected.Vo_over_nVt, 1e-7, (x) => outputInto(UNIT, x)),
      ...each('Vo/V', e.inputs.x, e.expected.Vo_over_V, 1e-7, (x) => outputInto(UNIT, x) / x),
      ...each('Rin/Rj', e.inputs.x, e.expected.Rin_over_Rj, 1e-7, (x) => radioResistance(UNIT, x, outputInto(UNIT, x))),
    ],
  },
  {
    figure: 'detector output, short circuit',
    against: BESSEL,
    errorUnit: '%',
    file: 'detect-hear',
    ids: /^DET-bessel-sc-table$/,
    check: (e) => [
      ...each('Idc/Is', e.inputs.x, e.expected.Idc_over_Is, 1e-7, (x) => {
        UNIT.law.at(x, 0, out);
        return out[MEAN]!;
      }),
      ...each('Rin/Rj', e.inputs.x, e.expected.Rin_over_Rj, 1e-7, (x) => radioResistance(UNIT, x, 0)),
    ],
  },
  {
    figure: 'detector output, into a load',
    against: BESSEL,
    errorUnit: '%',
    file: 'detect-hear',
    ids: /^DET-bessel-loaded-table$/,
    check: (e) =>
      (e.expected as number[][]).flatMap(([load, x, u, radio, efficiency]) => {
        const output = outputInto(UNIT, x!, load!);
        const rin = radioResistance(UNIT, x!, output);
        const what = `RL/Rj ${load}, x ${x}`;
        return [
          row(`${what}: u`, output, u!, 1e-6),
          row(`${what}: Rin/Rj`, rin, radio!, 1e-6),
          row(`${what}: efficiency`, output ** 2 / load! / (x! ** 2 / (2 * rin)), efficiency!, 1e-6),
        ];
      }),
  },
  {
    figure: 'detector output, source and series resistance in the law',
    against: 'cycle average by the Wright omega function',
    errorUnit: '%',
    file: 'detect-hear',
    ids: /^DET-ritz-50ohm$/,
    check: (e) =>
      (e.expected as number[][]).flatMap(([load, dbm, , source, both]) => {
        const { Is_A, n, T_K, Rg_ohm, Rs_ohm } = e.inputs;
        const amplitude = Math.sqrt(8 * Rg_ohm * 1e-3 * 10 ** (dbm! / 10));
        const what = `RL ${load}, ${dbm} dBm`;
        return [
          row(`${what}: Rg`, outputInto(junction(Is_A, n, T_K, Rg_ohm), amplitude, load), source!, 1e-6),
          row(`${what}: Rg and Rs`, outputInto(junction(Is_A, n, T_K, Rg_ohm + Rs_ohm), amplitude, load), both!, 1e-6),
        ];
      }),
  },
  {
    figure: 'detector output, broadband into 50 ohm',
    against: 'R/(2 n Vt)',
    errorUnit: '%',
    file: 'detect-hear',
    ids: /^DET-50ohm-ceiling$/,
    check: (e) => {
      const power = 1e-12;
      const amplitude = Math.sqrt(2 * e.inputs.R_ohm * power);
      return [row('gamma', outputInto(junction(1e-7, e.inputs.n, e.inputs.T_K), amplitude) / power, e.expected.gamma_V_per_W, 1e-6)];
    },
  },
  {
    figure: 'detector, end of the square law',
    against: '16 Is n Vt',
    errorUnit: '%',
    file: 'detect-hear',
    ids: /^DET-crossover$/,
    check: (e) =>
      each('Pc', e.inputs.Is_A, e.expected.Pc_W, 1e-6, (i) => crossoverPower(weakOf(junction(i, e.inputs.n, e.inputs.T_K))) ?? Number.NaN),
  },
  {
    figure: 'detector, forward voltage of a low-barrier type',
    against: 'data sheet, printed limits',
    errorUnit: 'V',
    file: 'detect-hear',
    ids: /^DIODE-BAT15$/,
    check: (e) => {
      // the values that the record's note calls consistent with the sheet
      const { law } = junction(0.28e-6, 1.08, 300, 3);
      const forward = (current: number) => brent((v) => law.current(v, 0) - current, 0, 1)!;
      return (
        [
          [1e-3, e.expected.VF_1mA_V],
          [10e-3, e.expected.VF_10mA_V],
        ] as const
      ).flatMap(([current, [low, typical, high]]) => [
        { what: `typical at ${current} A`, got: forward(current), expected: typical, tolerance: { abs: 0.005 } },
        { what: `limits at ${current} A`, got: forward(current), expected: (low + high) / 2, tolerance: { abs: (high - low) / 2 } },
      ]);
    },
  },
  {
    figure: 'FET detector, weak signal above threshold',
    against: 'Dyakonov & Shur',
    errorUnit: '%',
    file: 'detect-hear',
    ids: /^FET-square-law$/,
    check: (e) =>
      // strong inversion proper is the limit of a cold channel; at 300 K weak inversion still adds a few per cent at 0.2 V
      each('dU', e.inputs.Ua_V, e.expected.dU_V, 1e-6, (ua, k) =>
        squareLawOutput(channelAt({ temperature: 30, gateBias: e.inputs.Vgs_minus_Vth_V[k] }), ua),
      ),
  },
  {
    figure: 'FET detector, weak signal in weak inversion',
    against: 'Sakowicz et al., Ua^2/(4 n Vt)',
    errorUnit: '%',
    file: 'detect-hear',
    ids: /^FET-generalised$/,
    check: (e) => [
      row(
        'dU',
        squareLawOutput(channelAt({ slopeFactor: e.inputs.n, temperature: e.inputs.T_K, gateBias: -1.5 }), e.inputs.Ua_V),
        e.expected.dU_V,
        1e-6,
      ),
    ],
  },
  {
    figure: 'thermal noise',
    against: 'Nyquist',
    errorUnit: '%',
    file: 'detect-hear',
    ids: /^NOISE-thermal$/,
    check: (e) => {
      const density = (r: number) => thermalNoiseVoltageDensity(r, e.inputs.T_K);
      return [
        ...each('density', e.inputs.R_ohm, e.expected.en_V_per_rtHz, 1e-6, density),
        ...each('in the band', e.inputs.R_ohm, e.expected.vn_V, 1e-6, (r) => density(r) * Math.sqrt(e.inputs.B_Hz)),
      ];
    },
  },
  {
    figure: 'thermal noise',
    against: 'Nyquist',
    errorUnit: '%',
    file: 'detect-hear',
    ids: /^NOISE-available$/,
    check: (e) => each('kTB', e.inputs.T_K, e.expected.P_W, 1e-6, (t) => availableThermalNoisePower(t, e.inputs.B_Hz)),
  },
  {
    figure: 'detector, noise-equivalent power',
    against: '4 sqrt(kT n Vt Is)',
    errorUnit: '%',
    file: 'detect-hear',
    ids: /^NOISE-NEP$/,
    check: (e) =>
      each('NEP', e.inputs.Is_A, e.expected.NEP_W_per_rtHz, 1e-6, (i, k) => {
        const m = junction(i, e.inputs.n[k], e.inputs.T_K);
        return noiseEquivalentPower(m.currentSensitivity, m.zeroBiasResistance, e.inputs.T_K);
      }),
  },
  {
    figure: 'detector, tangential sensitivity',
    against: '8 dB over thermal noise',
    errorUnit: '%',
    file: 'detect-hear',
    ids: /^NOISE-TSS$/,
    check: (e) => {
      const m = junction(5e-6, 1.05, e.inputs.T_K);
      const nep = noiseEquivalentPower(m.currentSensitivity, m.zeroBiasResistance, e.inputs.T_K);
      return [row('P', tangentialSensitivity(nep, e.inputs.B_Hz, e.inputs.SNR_dB), e.expected.P_W, 1e-5)];
    },
  },
];

export const leftOut: readonly LeftOut[] = [
  {
    file: 'detect-hear',
    ids: /^DET-form-bessel$/,
    reason: 'the relation itself, without numbers; its tables DET-bessel-oc, -sc and -loaded are claimed',
  },
  {
    file: 'detect-hear',
    ids: /^DIODE-SMS7630$/,
    reason: 'a set of parameters that goes in: the parts library holds it, and DET-Rj and DET-Cj claim what follows from it',
  },
  {
    file: 'detect-hear',
    ids: /^FET-ALD(110800|212900)$/,
    reason: 'one current of one part, from which the transconductance factor in the parts library is made; nothing is left to compare',
  },
];
