import { SPEED_OF_LIGHT } from '../../constants.ts';
import { type Figure, term, type Working } from '../../figure.ts';
import { C, type Complex } from '../../numeric/index.ts';
import type { AerialAt, Arrival } from '../model.ts';
import { sourceFigures } from '../source-figures.ts';
import type { Converged } from './convergence.ts';
import { frontToBack, strongestDirection } from './pattern.ts';
import { radiatedResistance } from './radiated-power.ts';
import type { Discretised, WireSolution } from './solve-wires.ts';

const SOURCE = 'Richmond, NASA CR-2396 (1974); reference/antennas.md section 5';
const METHOD = 'method of moments';
const HOLDS =
  'straight thin wires, length over 2 diameters, thinner than 2 % of the wavelength; body of the listener and all that is not listed left out';

/**
 * What the aerial is at one frequency towards one arrival, and how sure that is.
 *
 * @param slope - of the terminal impedance with frequency [ohm/Hz]
 */
export function wireFigures(
  at: AerialAt,
  solved: { readonly discretised: Discretised; readonly solution: WireSolution },
  cut: Converged,
  slope: Complex,
  arrival: Arrival,
): readonly Figure[] {
  const { discretised: d, solution: s } = solved;
  const frequency = s.frequency;
  const size = [
    term('lambda', 'wavelength', SPEED_OF_LIGHT / frequency, 'm'),
    term('N', 'segments', cut.segments, '1'),
    term('n', 'unknown currents', d.mesh.unknowns, '1'),
  ];
  const matrix: Working = {
    formula: 'Z = 1/(c Y c), Y = inverse of Z_mn = (j eta/4 pi) [k t.t A - Q/k], A, Q double integrals of e^(-jkR)/R',
    terms: size,
    source: SOURCE,
    holds: HOLDS,
  };
  const figure = (name: string, label: string, value: number | null, unit: string, working: Working, spread?: number): Figure => ({
    name: `aerial.${name}`,
    label,
    value,
    unit,
    method: METHOD,
    ...(spread === undefined || value === null ? {} : { low: value - spread, high: value + spread }),
    working,
  });
  const cutting = cut.estimatedError;
  const radiated = radiatedResistance(d, s);
  const best = strongestDirection(d, s);
  const ratio = frontToBack(d, s, arrival);
  return [
    ...sourceFigures('aerial', METHOD, at, frequency, {
      resistance: matrix,
      reactance: matrix,
      loss: {
        formula: "R_l = [sum of R' integral of |I|^2 dl + loads] / |I(feed)|^2",
        terms: size,
        source: 'skin effect: Ramo, Whinnery & Van Duzer, Fields and Waves, sec. 4.5',
        holds: 'smooth metal; close turns crowd the current further',
      },
      effectiveLength: {
        formula: 'h = integral of I(l)/I(feed) t e^(jk r.l) dl',
        terms: [...size, term('az', 'bearing of the mast', arrival.azimuth, 'rad'), term('el', 'elevation', arrival.elevation, 'rad')],
        source: 'Balanis, Antenna Theory, 3rd ed., sec. 2.15 (reciprocity)',
        holds: 'over the wires alone: reflection from the ground is in the field that `place` gives',
      },
    }),
    figure('segments', 'segments', cut.segments, '1', {
      formula: 'the least number for which half as many again change the impedance little',
      terms: size,
      source: 'convergence test',
    }),
    figure('cuttingError', 'likely error of the impedance by the number of segments', cutting, '1', {
      formula: '|Z(M) - Z(N)|/|Z(N)| * M/|M - N|',
      terms: [
        term('N', 'segments', cut.segments, '1'),
        term('M', 'segments of the comparison', cut.comparedWith, '1'),
        term('|Z(N)|', 'impedance', C.abs(cut.impedance), 'ohm'),
        term('|Z(M)|', 'impedance of the comparison', cut.comparedImpedance === null ? null : C.abs(cut.comparedImpedance), 'ohm'),
      ],
      source: 'estimate: the error falls about as 1/N (reference/antennas.md section 5)',
      holds: 'at the top of the band; an infinitely narrow gap has no limit on thick wires',
    }),
    figure(
      'tuningBand',
      'the same error as a shift of frequency or length, either way',
      cutting === null || C.abs(slope) === 0 ? null : (cutting * C.abs(at.impedance)) / (C.abs(slope) * frequency),
      '1',
      {
        formula: 'error |Z| / (f |dZ/df|)',
        terms: [term('|dZ/df|', 'slope of the impedance', C.abs(slope), 'ohm/Hz'), term('|Z|', 'impedance', C.abs(at.impedance), 'ohm')],
        source: 'estimate from the convergence test',
      },
    ),
    figure('powerBalance', 'power radiated and turned to heat, over power in', (radiated + at.lossResistance) / at.impedance.re, '1', {
      formula: '(R_r + R_l)/R, R_r = eta k^2/(16 pi^2) integral of |N|^2 over the sphere',
      terms: [
        term('R_r', 'radiation resistance by the far field', radiated, 'ohm'),
        term('R_l', 'loss resistance', at.lossResistance, 'ohm'),
      ],
      source: 'Balanis, Antenna Theory, 3rd ed., sec. 2.13',
      holds: '1 where all is well; over real ground less, by what the ground swallows',
    }),
    figure('greatestGain', 'greatest gain over isotropic, any direction', best.gain.total, 'dB re isotropic', {
      formula: 'G = pi eta |N|^2/(lambda^2 R)',
      terms: [
        term('az', 'bearing of it', best.arrival.azimuth, 'rad'),
        term('el', 'elevation of it', best.arrival.elevation, 'rad'),
        term('R', 'terminal resistance', at.impedance.re, 'ohm'),
      ],
      source: 'Balanis, Antenna Theory, 3rd ed., sec. 2.15',
      holds: 'with the reflection of the ground, where one is given',
    }),
    figure('frontToBack', 'gain towards the mast less that in the opposite bearing', ratio, 'dB', {
      formula: '10 log10(|N(az)|^2/|N(az + pi)|^2)',
      terms: [term('az', 'bearing of the mast', arrival.azimuth, 'rad'), term('el', 'elevation', arrival.elevation, 'rad')],
      source: 'definition',
    }),
  ];
}
