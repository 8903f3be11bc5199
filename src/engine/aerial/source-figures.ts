import { ETA0, SPEED_OF_LIGHT } from '../constants.ts';
import { type Figure, type Term, term, type Working } from '../figure.ts';
import { C } from '../numeric/index.ts';
import type { AerialAt } from './model.ts';

/** How the numbers of one kind of aerial came about; the figures common to every aerial hang on it. */
export interface SourceWorking {
  readonly resistance: Working;
  readonly reactance: Working;
  /** null where the loss is not known apart from the rest, as in given values */
  readonly loss: Working | null;
  readonly effectiveLength: Working;
}

/** A component so far below the other is the rounding of sums that cancel. */
const aboveRounding = (length: number, other: number): number => (length > 1e-10 * other ? length : 0);

const decibels = (ratio: number): number | null => (ratio > 0 ? 10 * Math.log10(ratio) : null);

/**
 * Gain over isotropic of a source, best polarisation, towards one arrival: G = pi eta |h|^2 / (lambda^2 R).
 *
 * The available power |E h|^2 / (4 R) is then E^2/eta * lambda^2 G / (4 pi). With the radiation resistance in place of R it is the
 * directivity. Source: Balanis, Antenna Theory, 3rd ed., sec. 2.15; ITU-R P.525.
 */
export function gainOf(effectiveLengthSquared: number, resistance: number, wavelength: number): number {
  return (Math.PI * ETA0 * effectiveLengthSquared) / (wavelength * wavelength * resistance);
}

/** Resistance, reactance, losses, effective length, gain and polarisation of a source, each with its working. */
export function sourceFigures(prefix: string, method: string, at: AerialAt, frequency: number, working: SourceWorking): Figure[] {
  const wavelength = SPEED_OF_LIGHT / frequency;
  const [h, v] = [C.abs(at.horizontal), C.abs(at.vertical)];
  const horizontal = aboveRounding(h, v);
  const vertical = aboveRounding(v, h);
  const square = horizontal * horizontal + vertical * vertical;
  const resistance = at.impedance.re;
  const loss = working.loss ? at.lossResistance : null;
  const radiation = loss === null ? null : resistance - loss;
  const figure = (name: string, label: string, value: number | null, unit: string, how: Working): Figure => ({
    name: `${prefix}.${name}`,
    label,
    value,
    unit,
    method,
    working: how,
  });
  const split: Term[] = [
    term('R', 'terminal resistance', resistance, 'ohm'),
    term('R_l', 'loss resistance', loss, 'ohm'),
    term('R_r', 'radiation resistance', radiation, 'ohm'),
  ];
  const lengths: Term[] = [
    term('h_h', 'effective length, horizontal field', horizontal, 'm'),
    term('h_v', 'effective length, vertical field', vertical, 'm'),
    term('lambda', 'wavelength', wavelength, 'm'),
  ];
  const unknown = 'given values do not say how much of the resistance is loss';
  const source = 'Balanis, Antenna Theory, 3rd ed., sec. 2.15';
  const polarisation = (h: number): number | null => (square > 0 ? decibels((h * h) / square) : null);
  return [
    figure('resistance', 'terminal resistance', resistance, 'ohm', working.resistance),
    figure('reactance', 'terminal reactance', at.impedance.im, 'ohm', working.reactance),
    figure('lossResistance', 'loss resistance', loss, 'ohm', working.loss ?? { formula: 'R_l', terms: [], source: unknown }),
    figure('radiationResistance', 'radiation resistance', radiation, 'ohm', { formula: 'R_r = R - R_l', terms: split, source }),
    figure('efficiency', 'efficiency', radiation === null ? null : radiation / resistance, '1', {
      formula: 'R_r / R',
      terms: split,
      source: 'Balanis, Antenna Theory, 3rd ed., eq. 2-90',
    }),
    figure('effectiveLength.horizontal', 'effective length for the horizontal field', horizontal, 'm', working.effectiveLength),
    figure('effectiveLength.vertical', 'effective length for the vertical field', vertical, 'm', working.effectiveLength),
    figure('gain', 'gain over isotropic towards the mast', decibels(gainOf(square, resistance, wavelength)), 'dB re isotropic', {
      formula: 'G = pi eta (h_h^2 + h_v^2) / (lambda^2 R)',
      terms: [...lengths, split[0]!],
      source,
      holds: 'for a wave of the polarisation the aerial likes best, into a matched load',
    }),
    figure(
      'directivity',
      'directivity towards the mast',
      radiation === null || radiation <= 0 ? null : decibels(gainOf(square, radiation, wavelength)),
      'dB re isotropic',
      { formula: 'D = pi eta (h_h^2 + h_v^2) / (lambda^2 R_r)', terms: [...lengths, split[2]!], source },
    ),
    ...(['horizontal', 'vertical'] as const).map((p) =>
      figure(
        `polarisationMismatch.${p}`,
        `polarisation mismatch of a ${p}ly polarised wave`,
        polarisation(p === 'horizontal' ? horizontal : vertical),
        'dB',
        {
          formula: `10 log10(h_${p[0]}^2 / (h_h^2 + h_v^2))`,
          terms: lengths.slice(0, 2),
          source: 'Balanis, Antenna Theory, 3rd ed., eq. 2-71',
          holds: 'none where nothing of that polarisation is heard',
        },
      ),
    ),
  ];
}
