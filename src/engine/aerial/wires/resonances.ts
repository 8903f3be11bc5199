import { brent } from '../../numeric/index.ts';
import type { AerialModel } from '../model.ts';

/** A frequency at which the terminals show resistance alone. */
export interface Resonance {
  /** [Hz] */
  readonly frequency: number;
  /** there [ohm] */
  readonly resistance: number;
  /** the reactance rises through nothing, as in a series circuit (half-wave dipole); or falls, as in a parallel one (full wave) */
  readonly kind: 'series' | 'parallel';
}

/** Steps of the search, as a ratio of frequencies: two resonances of one wire lie much further apart. */
const STEP = 1.01;
/** Where the arrival does not matter. */
const ANYWHERE = { azimuth: 0, elevation: 0 };

/**
 * Resonances of an aerial in a range of frequencies, lowest first; none where it stays inductive or capacitive throughout.
 *
 * @param from, to - [Hz]
 */
export function resonances(model: Pick<AerialModel, 'at'>, from: number, to: number): readonly Resonance[] {
  const impedance = (f: number) => model.at(f, ANYWHERE).impedance;
  const steps = Math.max(1, Math.ceil(Math.log(to / from) / Math.log(STEP)));
  const found: Resonance[] = [];
  let last = { frequency: from, reactance: impedance(from).im };
  for (let i = 1; i <= steps; i++) {
    const frequency = from * (to / from) ** (i / steps);
    const reactance = impedance(frequency).im;
    if (last.reactance < 0 !== reactance < 0) {
      const at = brent((f) => impedance(f).im, last.frequency, frequency, 1e-9 * frequency)!;
      found.push({ frequency: at, resistance: impedance(at).re, kind: reactance > last.reactance ? 'series' : 'parallel' });
    }
    last = { frequency, reactance };
  }
  return found;
}
