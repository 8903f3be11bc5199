import { SPEED_OF_LIGHT } from '../constants.ts';
import type { Figure, Term, Working } from '../figure.ts';
import { term } from '../figure.ts';
import { C } from '../numeric/index.ts';
import type { AerialAt, AerialModel, Arrival } from './model.ts';
import { type CurrentPiece, momentOf, radiationResistance } from './sinusoidal-current.ts';
import { type SourceWorking, sourceFigures } from './source-figures.ts';

/** An upright aerial at one frequency, from which impedance and effective length follow. */
export interface UprightState {
  readonly pieces: readonly CurrentPiece[];
  /** `plane`: stands on earth or on a large conducting surface at z = 0 */
  readonly over: 'space' | 'plane';
  /** height of the feed [m], to which the phase is referred */
  readonly feed: number;
  /** [ohm] at the feed */
  readonly reactance: number;
  readonly loss: number;
}

/** What one kind of upright aerial has to say for itself. */
export interface UprightKind {
  readonly method: string;
  readonly source: string;
  /** state at a frequency [Hz], wave number k [rad/m] */
  state(frequency: number, k: number): UprightState;
  remarks(frequency: number, wavelength: number): string[];
  /** its own figures, beside those of every source */
  own(frequency: number): readonly Figure[];
  readonly reactance: Omit<Working, 'terms'>;
  readonly loss: Omit<Working, 'terms'>;
  /** lengths and thicknesses */
  readonly terms: readonly Term[];
  readonly holds: string;
}

/**
 * Upright aerial of a known current: hears the vertical component alone, alike from all bearings.
 *
 * Effective length: h_v = cos e * integral of I(z)/I(0) e^(jkz sin e) dz. Over a plane the field given is that at the plane, which varies as
 * cos(k z sin e) above it. Radiation resistance from the same current, so that gain and effective length agree by themselves.
 */
export function uprightModel(kind: UprightKind): AerialModel {
  const waveNumber = (frequency: number): number => (2 * Math.PI * frequency) / SPEED_OF_LIGHT;
  const at = (frequency: number, arrival: Arrival): AerialAt => {
    const k = waveNumber(frequency);
    const { pieces, over, feed, reactance, loss } = kind.state(frequency, k);
    const sine = Math.sin(arrival.elevation);
    const up = momentOf(pieces, k, sine);
    const along = over === 'plane' ? C.scale(C.add(up, momentOf(pieces, k, -sine)), 0.5) : C.mul(up, C.cis(-k * feed * sine));
    return {
      impedance: { re: radiationResistance(pieces, k, over) + loss, im: reactance },
      horizontal: C.ZERO,
      vertical: C.scale(along, Math.cos(arrival.elevation)),
      lossResistance: loss,
    };
  };
  return {
    method: kind.method,
    source: kind.source,
    at,
    remarks: (frequency) => kind.remarks(frequency, SPEED_OF_LIGHT / frequency),
    figures(frequency, arrival) {
      const now = at(frequency, arrival);
      const terms = [...kind.terms, term('lambda', 'wavelength', SPEED_OF_LIGHT / frequency, 'm')];
      const working: SourceWorking = {
        resistance: {
          formula: 'R = eta k^2/(8 pi) * integral of |M(c)|^2 (1 - c^2) dc + R_l',
          terms: [...terms, term('R_l', 'loss resistance', now.lossResistance, 'ohm')],
          source: 'Balanis, Antenna Theory, 3rd ed., sec. 4.5; 4.7 over a plane',
          holds: kind.holds,
        },
        reactance: { ...kind.reactance, terms },
        loss: { ...kind.loss, terms },
        effectiveLength: {
          formula: 'h_v = cos e * M(sin e), M(c) = integral of I(z)/I(0) e^(jkzc) dz',
          terms: [...terms, term('e', 'elevation', arrival.elevation, 'rad')],
          source: 'Balanis, Antenna Theory, 3rd ed., sec. 2.15',
          holds: kind.holds,
        },
      };
      return [...sourceFigures('aerial', kind.method, now, frequency, working), ...kind.own(frequency)];
    },
  };
}
