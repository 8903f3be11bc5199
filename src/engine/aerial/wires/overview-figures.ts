import { type Figure, term } from '../../figure.ts';
import type { PatternSummary } from './pattern-summary.ts';
import type { Resonance } from './resonances.ts';

const METHOD = 'method of moments';

/** Resonances found in a range, each with what it is good for; one figure without a value where there is none. */
export function resonanceFigures(found: readonly Resonance[], from: number, to: number): readonly Figure[] {
  const range = [term('f1', 'searched from', from, 'Hz'), term('f2', 'to', to, 'Hz')];
  const working = {
    formula: 'X(f) = 0',
    terms: range,
    source: "Brent's method on the computed reactance",
    holds: 'inside the range alone',
  };
  const resonance = (name: string, label: string, value: number | null): Figure => ({
    name: `aerial.${name}`,
    label,
    value,
    unit: 'Hz',
    method: METHOD,
    working,
  });
  if (found.length === 0) return [resonance('resonance', 'resonance', null)];
  return found.flatMap(({ frequency, resistance, kind }, i) => {
    const tail = i === 0 ? '' : `.${i + 1}`;
    return [
      resonance(`resonance${tail}`, kind === 'series' ? 'resonance' : 'resonance of the parallel kind', frequency),
      {
        name: `aerial.resonantResistance${tail}`,
        label: 'resistance there',
        value: resistance,
        unit: 'ohm',
        method: METHOD,
        working: { formula: 'R(f0)', terms: [term('f0', 'resonance', frequency, 'Hz')], source: 'computed impedance' },
      },
    ];
  });
}

/** Gain, direction, front-to-back and widths of the strongest lobe. */
export function patternFigures({ strongest, frontToBack, width }: PatternSummary): readonly Figure[] {
  const { azimuth, elevation } = strongest.arrival;
  const direction = [term('az', 'bearing of the strongest direction', azimuth, 'rad'), term('el', 'its elevation', elevation, 'rad')];
  const source = 'Balanis, Antenna Theory, 3rd ed., sec. 2.2, 2.15';
  const figure = (name: string, label: string, value: number | null, unit: string, formula: string): Figure => ({
    name: `pattern.${name}`,
    label,
    value,
    unit,
    method: METHOD,
    working: { formula, terms: direction, source },
  });
  return [
    figure('gain', 'greatest gain over isotropic', strongest.gain.total, 'dB re isotropic', 'G = pi eta |N|^2/(lambda^2 R)'),
    figure('bearing', 'bearing of it', turned(azimuth), 'rad', 'greatest of a grid of 10 degrees, refined by halving'),
    figure('elevation', 'elevation of it', elevation, 'rad', 'greatest of a grid of 10 degrees, refined by halving'),
    figure('frontToBack', 'front-to-back ratio', frontToBack, 'dB', 'G(az) - G(az + pi)'),
    figure('width.level', 'half-power width round the compass', width.level, 'rad', 'angle between -3 dB on either side'),
    figure('width.upright', 'half-power width up and down', width.upright, 'rad', 'angle between -3 dB on either side'),
  ];
}

const turned = (angle: number): number => ((angle % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
