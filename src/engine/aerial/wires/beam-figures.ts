import { type Figure, type Term, term } from '../../figure.ts';
import type { BeamResult, BeamWish } from './beam-design.ts';

const METHOD = 'method of moments';

/** What a beam does at the frequency it is designed for. */
export function beamFigures({ gain, frontToBack, impedance, match }: BeamResult, { frequency, goal }: BeamWish): readonly Figure[] {
  const at = term('f', 'frequency', frequency, 'Hz');
  const figure = (
    name: string,
    label: string,
    value: number | null,
    unit: string,
    formula: string,
    source: string,
    terms: readonly Term[] = [],
  ): Figure => ({
    name: `beam.${name}`,
    label,
    value,
    unit,
    method: METHOD,
    working: { formula, terms: [at, ...terms], source, holds: 'a boom that insulates the elements; free space' },
  });
  const solved = 'piecewise-sinusoidal Galerkin method, Richmond, NASA CR-2396 (1974)';
  const load =
    goal.kind === 'gain'
      ? []
      : [
          figure(
            'match',
            'part of the power that the load takes',
            match,
            '1',
            '4 R R_L/|Z + Z_L|^2',
            'Pozar, Microwave Engineering, 4th ed., sec. 2.6',
            [
              term('R', 'resistance of the beam', impedance.re, 'ohm'),
              term('X', 'reactance of the beam', impedance.im, 'ohm'),
              term('R_L', 'resistance of the load', goal.resistance, 'ohm'),
              term('X_L', 'reactance of the load', goal.reactance, 'ohm'),
            ],
          ),
        ];
  return [
    figure('gain', 'gain forwards over isotropic', gain, 'dB re isotropic', 'G = pi eta |N|^2/(lambda^2 R)', solved),
    figure('frontToBack', 'front-to-back ratio', frontToBack, 'dB', 'G(az) - G(az + pi)', solved),
    figure('resistance', 'resistance', impedance.re, 'ohm', 'Re Z', solved),
    figure('reactance', 'reactance', impedance.im, 'ohm', 'Im Z', solved),
    ...load,
  ];
}
