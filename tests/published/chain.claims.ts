import { goldenMaximum } from '#engine';
import { linearLaw, resonanceCurve, slopeHarmonics, squareLaw } from '../unit/chain/ideal-laws.ts';
import type { Claim, Comparison, LeftOut } from './claim.ts';

const lawOf = (name: string) => (name === 'sq' ? squareLaw : linearLaw);

/** Detuning of the greatest audio for a vanishing deviation, found by the engine. */
const steepest = (name: string) => goldenMaximum((x) => slopeHarmonics(lawOf(name), x, 1e-3, 16)[1]!, 0.3, 1.2, 1e-6);
const inflection = (name: string, expected: { x: number; slope: number }, response: number, at: string): Comparison[] => {
  const x = steepest(name);
  return [
    // a maximum is flat: its place is known only to the root of the accuracy of its height
    { what: 'steepest x', got: x, expected: expected.x, tolerance: { abs: 1e-4 } },
    {
      what: 'slope',
      got: slopeHarmonics(lawOf(name), expected.x, 1e-3, 16)[1]! / 1e-3,
      expected: expected.slope,
      tolerance: { rel: 2e-6 },
    },
    {
      what: at,
      got: name === 'sq' ? resonanceCurve(expected.x) ** 2 : resonanceCurve(expected.x),
      expected: response,
      tolerance: { rel: 2e-6 },
    },
  ];
};

/** Balanced pair: two detectors on tanks tuned to either side, outputs subtracted. */
const pair = (name: string, a: number, d: number): number[] => {
  const up = slopeHarmonics(lawOf(name), -a, d);
  const down = slopeHarmonics(lawOf(name), a, d);
  // even harmonics cancel by symmetry and odd ones add
  return up.map((u, k) => (k % 2 === 1 ? u + down[k]! : 0));
};

export const claims: readonly Claim[] = [
  {
    figure: 'slope detection, exact quasi-static harmonics',
    against: 'numerical Fourier analysis of the resonance curve',
    errorUnit: '%',
    file: 'detect-hear',
    ids: /^FM-quasistatic-table$/,
    check: (e) =>
      (e.expected as (string | number)[][]).flatMap(([law, x, d, dc, a1, hd2, hd3]): Comparison[] => {
        const h = slopeHarmonics(lawOf(String(law)), Number(x), Number(d));
        const what = `${law} x=${x} D=${d}`;
        return [
          { what: `${what} DC`, got: h[0]!, expected: Number(dc), tolerance: { rel: 1e-5 } },
          { what: `${what} A1`, got: h[1]!, expected: Number(a1), tolerance: { rel: 1e-5 } },
          { what: `${what} HD2`, got: h[2]! / h[1]!, expected: Number(hd2), tolerance: { rel: 1e-4, abs: 2e-6 } },
          { what: `${what} HD3`, got: h[3]! / h[1]!, expected: Number(hd3), tolerance: { rel: 1e-4, abs: 2e-6 } },
        ];
      }),
  },
  {
    figure: 'slope detection, steepest point',
    against: 'calculus on the resonance curve',
    errorUnit: '%',
    file: 'detect-hear',
    ids: /^FM-inflection-(env|sq)$/,
    check: (e) =>
      e.id.endsWith('sq')
        ? inflection('sq', e.expected, e.expected.P, 'response')
        : inflection('env', e.expected, e.expected.H, 'response'),
  },
  {
    figure: 'slope detection, leading-order distortion',
    against: 'Taylor expansion of the resonance curve',
    errorUnit: '%',
    file: 'detect-hear',
    ids: /^FM-HD-formulas$/,
    check: () =>
      [0.4, 0.9, 1.4].flatMap((x): Comparison[] => {
        const d = 0.02;
        const env = slopeHarmonics(linearLaw, x, d);
        const sq = slopeHarmonics(squareLaw, x, d);
        const q = 1 + x * x;
        return [
          { what: 'env HD2', got: env[2]! / env[1]!, expected: ((d / 4) * Math.abs(2 * x * x - 1)) / (x * q), tolerance: { rel: 0.01 } },
          {
            what: 'env HD3',
            got: env[3]! / env[1]!,
            expected: (((d * d) / 8) * Math.abs(3 - 2 * x * x)) / q ** 2,
            tolerance: { rel: 0.01 },
          },
          { what: 'sq HD2', got: sq[2]! / sq[1]!, expected: ((d / 4) * Math.abs(3 * x * x - 1)) / (x * q), tolerance: { rel: 0.01 } },
          { what: 'sq HD3', got: sq[3]! / sq[1]!, expected: (((d * d) / 2) * Math.abs(1 - x * x)) / q ** 2, tolerance: { rel: 0.01 } },
        ];
      }),
  },
  {
    figure: 'balanced pair of slopes',
    against: 'numerical Fourier analysis; calculus',
    errorUnit: '%',
    file: 'detect-hear',
    ids: /^FM-BT-(table|maxslope)$/,
    check: (e) =>
      e.id.endsWith('table')
        ? (e.expected as (string | number)[][]).flatMap(([law, a, d, a1, hd3, hd5]): Comparison[] => {
            const h = pair(String(law), Number(a), Number(d));
            return [
              { what: 'A1', got: h[1]!, expected: Number(a1), tolerance: { rel: 1e-4 } },
              { what: 'HD3', got: h[3]! / h[1]!, expected: Number(hd3), tolerance: { rel: 1e-4, abs: 2e-6 } },
              { what: 'HD5', got: h[5]! / h[1]!, expected: Number(hd5), tolerance: { rel: 1e-4, abs: 2e-6 } },
            ];
          })
        : (e.inputs.a as number[]).map((a, k) => ({
            what: `slope a=${a}`,
            got: pair('env', a, 1e-3)[1]! / 1e-3,
            expected: e.expected.slope[k],
            tolerance: { rel: 3e-6 },
          })),
  },
  {
    figure: 'balanced pair, most linear spacing',
    against: 'third derivative of the resonance curve',
    errorUnit: '%',
    file: 'detect-hear',
    ids: /^FM-BT-linear$/,
    check: (e) => [
      {
        what: 'slope, linear law',
        got: pair('env', e.expected.a_linear_law, 1e-3)[1]! / 1e-3,
        expected: e.expected.slope_linear_law,
        tolerance: { rel: 3e-6 },
      },
      {
        what: 'slope, square law',
        got: pair('sq', e.expected.a_square_law, 1e-3)[1]! / 1e-3,
        expected: e.expected.slope_square_law,
        tolerance: { rel: 3e-6 },
      },
      {
        what: 'third harmonic there, linear law',
        got: pair('env', e.expected.a_linear_law, 0.05)[3]!,
        expected: 0,
        tolerance: { abs: 1e-7 },
      },
      {
        what: 'third harmonic there, square law',
        got: pair('sq', e.expected.a_square_law, 0.05)[3]!,
        expected: 0,
        tolerance: { abs: 1e-6 },
      },
    ],
  },
];

export const leftOut: readonly LeftOut[] = [
  {
    file: 'detect-hear',
    ids: /^FM-foster-seeley-equivalence$/,
    reason: 'an algebraic identity between two topologies; the engine offers neither phase-difference detector yet',
  },
  {
    file: 'detect-hear',
    ids: /^FM-Jaffe$/,
    reason: 'distortion of the phase of an FM wave, which an amplitude detector does not hear',
  },
];
