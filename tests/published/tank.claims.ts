import {
  type CurrentInWire,
  coaxialRingMutual,
  goldenMaximum,
  lawCapacitance,
  longWireInductance,
  lowFrequencyInductance,
  MU0,
  medhurstCapacitance,
  nagaokaCoefficient,
  nagaokaRosaInductance,
  ringInductance,
  ringSum,
  rosaMutualCorrection,
  rosaSelfCorrection,
  sheetInductance,
  straightWireInductance,
  thomsonFrequency,
  winding,
} from '#engine';
import type { Claim, Comparison, Entry, LeftOut } from './claim.ts';

const one = (what: string, got: number, entry: Entry): readonly Comparison[] => [
  { what, got, expected: entry.expected.value as number, tolerance: entry.tolerance },
];
/** Value of an input of a record, in its SI unit. */
const input = (entry: Entry, name: string): number => entry.inputs[name].value as number;
const current = (entry: Entry): CurrentInWire => (entry.id.includes('-lf-') ? 'uniform' : 'surface');
/** The first number of the note that follows some words. */
function noted(entry: Entry, words: RegExp): number {
  const found = new RegExp(`${words.source}\\s*([-+]?[0-9.]+(?:e[-+]?[0-9]+)?)`).exec(entry.note ?? '');
  if (!found) throw new Error(`${entry.id}: the note does not say ${words.source}`);
  return Number(found[1]);
}
/** Measured by a component analyser at low frequency on a 7.1 mm mandrel; pitch of enamelled 0.5 mm wire wound close, 0.54 mm (reference/coils.md section 3). */
const closeWound = (turns: number, e: Entry): number =>
  lowFrequencyInductance(
    winding({ turns, innerDiameter: input(e, 'mandrel'), wireDiameter: input(e, 'd_wire'), pitch: 0.54e-3, metal: 'copper' }),
  );
const LAWS = { slc: 'capacitance-linear', slw: 'wavelength-linear', slf: 'frequency-linear', log: 'logarithmic' } as const;

export const claims: readonly Claim[] = [
  {
    figure: 'mutual inductance, coaxial rings',
    against: "Maxwell's elliptic form",
    errorUnit: '%',
    file: 'coils',
    ids: /^mutual-\d/,
    check: (e) => one('mutual inductance', coaxialRingMutual(input(e, 'r1'), input(e, 'r2'), input(e, 'z')), e),
  },
  {
    figure: 'Nagaoka coefficient',
    against: 'Lorenz 1879, 12 digits',
    errorUnit: '%',
    file: 'coils',
    ids: /^nagaoka-/,
    check: (e) => one('K_L', nagaokaCoefficient(input(e, 'D_over_l')), e),
  },
  {
    figure: 'inductance, current sheet',
    against: 'exact sheet and worked examples',
    errorUnit: '%',
    file: 'coils',
    ids: /^coil-sheet-/,
    check: (e) => one('inductance', sheetInductance(input(e, 'N'), input(e, 'D_mean'), input(e, 'N') * input(e, 'pitch')), e),
  },
  {
    figure: 'inductance, current sheet',
    against: 'exact sheet and worked examples',
    errorUnit: '%',
    file: 'coils',
    ids: /^ex-c74-400t-sheet$/,
    check: (e) => one('inductance', sheetInductance(input(e, 'N'), 2 * input(e, 'mean_radius'), input(e, 'length')), e),
  },
  {
    figure: 'inductance, current sheet',
    against: 'exact sheet and worked examples',
    errorUnit: '%',
    file: 'coils',
    // the printed value is that of a rule for the bench; its note gives the exact sheet to 6 digits
    ids: /^ex-arrl-17\.6$/,
    check: (e) => [
      {
        what: 'inductance',
        got: sheetInductance(input(e, 'N'), input(e, 'd'), input(e, 'l')),
        expected: noted(e, /exact current sheet/) * 1e-6,
        tolerance: { rel: 5e-6 },
      },
    ],
  },
  {
    figure: 'inductance, current sheet',
    against: 'exact sheet and worked examples',
    errorUnit: '%',
    file: 'coils',
    // turns by a rule for the bench; the note gives the exact sheet with that many turns
    ids: /^ex-(?:arrl-26\.1|bowick-100nH)$/,
    check: (e) => {
      const turns = noted(e, /with/);
      const expected = noted(e, /turns =/) * (e.note!.includes('nH') ? 1e-9 : 1e-6);
      return [{ what: 'inductance', got: sheetInductance(turns, input(e, 'd'), input(e, 'l')), expected, tolerance: { rel: 1e-4 } }];
    },
  },
  {
    figure: 'inductance, current sheet',
    against: 'exact sheet and worked examples',
    errorUnit: '%',
    file: 'coils',
    // value of a rule for the bench, with the error of that rule: to 0.01 % (1928) and 0.001 % (1982)
    ids: /^wheeler/,
    check: (e) => {
      const expected = e.expected.value / (1 + noted(e, /(?:formula error|error vs exact)/) / 100);
      const got = sheetInductance(input(e, 'N'), 2 * input(e, 'r'), input(e, 'l'));
      return [{ what: 'inductance', got, expected, tolerance: { rel: e.id.startsWith('wheeler1928') ? 5.5e-5 : 5.5e-6 } }];
    },
  },
  {
    figure: 'inductance, tabulated coil',
    against: 'builders’ table, wire not stated',
    errorUnit: '%',
    file: 'coils',
    ids: /^ex-antentop-/,
    check: (e) => one('inductance', sheetInductance(input(e, 'N'), input(e, 'form_diameter'), input(e, 'l')), e),
  },
  {
    figure: 'round-wire corrections k_s, k_m',
    against: 'Rosa 1906, Grover 1946 tables 38, 39',
    errorUnit: '%',
    file: 'coils',
    ids: /^rosa-ks-/,
    check: (e) => one('k_s', rosaSelfCorrection(input(e, 'd_over_p'), 'uniform'), e),
  },
  {
    figure: 'round-wire corrections k_s, k_m',
    against: 'Rosa 1906, Grover 1946 tables 38, 39',
    errorUnit: '%',
    file: 'coils',
    ids: /^rosa-km-/,
    check: (e) => {
      const turns: number | string = e.inputs.N.value;
      return one('k_m', rosaMutualCorrection(turns === 'inf' ? Number.POSITIVE_INFINITY : Number(turns)), e);
    },
  },
  {
    figure: 'round-wire corrections k_s, k_m',
    against: 'Rosa 1906, Grover 1946 tables 38, 39',
    errorUnit: '%',
    file: 'coils',
    ids: /^ex-c74-400t-corr$/,
    check: (e) => {
      const k = rosaSelfCorrection(input(e, 'd') / input(e, 'pitch'), 'uniform') + rosaMutualCorrection(input(e, 'N'));
      return one('correction', MU0 * input(e, 'N') * input(e, 'mean_radius') * k, e);
    },
  },
  {
    figure: 'inductance, sheet with round-wire corrections',
    against: 'NBS Circular 74 p. 253; 3 to 10 turns exact',
    errorUnit: '%',
    file: 'coils',
    ids: /^ex-c74-400t$/,
    check: (e) =>
      one('inductance', nagaokaRosaInductance(input(e, 'N'), 2 * input(e, 'mean_radius'), input(e, 'd'), input(e, 'pitch'), 'uniform'), e),
  },
  {
    figure: 'inductance, sheet with round-wire corrections',
    against: 'NBS Circular 74 p. 253; 3 to 10 turns exact',
    errorUnit: '%',
    file: 'coils',
    ids: /^coil-rosa-/,
    check: (e) =>
      one('inductance', nagaokaRosaInductance(input(e, 'N'), input(e, 'D_mean'), input(e, 'd_wire'), input(e, 'pitch'), current(e)), e),
  },
  {
    figure: 'inductance, ring sum, 3 to 10 turns',
    against: 'rings one by one, exact',
    errorUnit: '%',
    file: 'coils',
    ids: /^coil-ringsum-/,
    check: (e) => {
      const turns = input(e, 'N');
      return one('inductance', ringSum(input(e, 'D_mean') / 2, input(e, 'd_wire') / 2, input(e, 'pitch'), turns, current(e)).of(turns), e);
    },
  },
  {
    figure: 'inductance, hand-wound coils',
    against: 'measured differences of 10 and fewer turns',
    errorUnit: '%',
    file: 'coils',
    ids: /^meas-delta-7\.1mm-/,
    check: (e) => one('difference', closeWound(10, e) - closeWound(input(e, 'n'), e), e),
  },
  {
    figure: 'inductance, single turn',
    against: 'Rayleigh & Niven 1881',
    errorUnit: '%',
    file: 'coils',
    ids: /^loop-[lh]f-/,
    check: (e) => one('inductance', ringInductance(input(e, 'R'), input(e, 'a'), current(e)), e),
  },
  {
    figure: 'inductance, straight wire',
    against: 'Rosa 1908',
    errorUnit: '%',
    file: 'coils',
    ids: /^wire-[lh]f-/,
    check: (e) => {
      const [length, radius] = [input(e, 'l'), input(e, 'd') / 2];
      const long = one('long wire', longWireInductance(length, radius, current(e)), e);
      if (current(e) === 'uniform') return long;
      const expected = noted(e, /without the l>>r approximation:/);
      return [...long, { what: 'any wire', got: straightWireInductance(length, radius), expected, tolerance: { rel: 1e-8 } }];
    },
  },
  {
    figure: 'self-capacitance of a coil',
    against: 'Medhurst 1947, measured',
    errorUnit: '%',
    file: 'coils',
    ids: /^medhurst-H-/,
    check: (e) => one('C / D', medhurstCapacitance(1, input(e, 'l_over_D')) ?? Number.NaN, e),
  },
  {
    figure: 'self-capacitance of a coil',
    against: 'Medhurst 1947, measured',
    errorUnit: '%',
    file: 'coils',
    ids: /^medhurst-C-/,
    check: (e) => one('C', medhurstCapacitance(input(e, 'D'), input(e, 'l')) ?? Number.NaN, e),
  },
  {
    figure: 'laws of the variable capacitor',
    against: 'Terman 1943',
    errorUnit: '%',
    file: 'coils',
    ids: /^cap-(?:slc|slw|slf|log)-/,
    check: (e) => {
      const kind = LAWS[e.id.split('-')[1] as keyof typeof LAWS];
      return one('capacitance', lawCapacitance({ kind }, input(e, 'Cmin'), input(e, 'Cmax'), input(e, 'rotation_fraction')), e);
    },
  },
  {
    figure: 'resonance',
    against: 'textbook problem',
    errorUnit: '%',
    file: 'coils',
    ids: /^res-/,
    check: (e) => one('frequency', thomsonFrequency(input(e, 'L'), input(e, 'C')), e),
  },
  {
    figure: 'coil shape with most inductance for its wire',
    against: 'exact sheet',
    errorUnit: '1',
    file: 'coils',
    ids: /^opt-Dl$/,
    // at given length of wire and pitch, D l is fixed and L goes as sqrt(D/l) K_L
    check: (e) =>
      one(
        'D / l',
        goldenMaximum((x) => Math.sqrt(x) * nagaokaCoefficient(x), 1, 5, 1e-7),
        e,
      ),
  },
];

export const leftOut: readonly LeftOut[] = [
  {
    file: 'coils',
    ids: /^meas-7\.1mm-N\d+$/,
    reason: 'measured with a fixture of unknown inductance (27 to 80 nH); the differences, in which it cancels, are checked',
  },
  {
    file: 'coils',
    ids: /^cap-plate-/,
    reason: 'parallel plates without fringe: the engine takes capacitors by their law and computes none from plates',
  },
  {
    file: 'coils',
    ids: /^(?:film-|tand-)/,
    reason: 'data of dielectrics and parts, not computed: they are the source of the film capacitors in src/parts/capacitors.json',
  },
];
