import {
  type AerialResonance,
  type Arrival,
  azimuthCut,
  C,
  type Complex,
  elevationCut,
  gainOf,
  type PatternPoint,
  patternSummary,
  resonances,
  SPEED_OF_LIGHT,
  type WireAerial,
} from '#engine';
import { type AerialView, arrivalOf } from './aerial-view.ts';

/** An aerial's pattern in two cuts. */
export interface AerialPattern {
  /** elevation of the cut round the compass: that of the strongest direction, level where the aerial is in the open [rad] */
  readonly elevation: number;
  readonly level: readonly PatternPoint[];
  /** bearing of the upright cut: that of the strongest direction [rad] */
  readonly azimuth: number;
  readonly upright: readonly PatternPoint[];
}

/** One point a degree. */
const POINTS = 360;

/** Round the compass, and upright through the strongest direction, at the frequency of the station looked at. */
export function aerialPattern({ at }: AerialView, bare: WireAerial): AerialPattern {
  const { discretised, solution } = bare.solved(at.station.frequency);
  const { azimuth, elevation: strongest } = patternSummary(discretised, solution).strongest.arrival;
  const open = discretised.structure.ground.kind === 'free-space';
  const elevation = open ? 0 : strongest;
  return {
    elevation,
    level: azimuthCut(discretised, solution, elevation, POINTS),
    azimuth,
    upright: elevationCut(discretised, solution, azimuth, open ? POINTS : POINTS / 2 + 1),
  };
}

/** An effective length so far below the greatest of all directions is the rounding of sums that cancel. */
const ROUNDING = 1e-10;

/** The same of an aerial that is known by closed form or by its values: round the level, and over the top through the strongest bearing. */
export function modelPattern({ model, at }: AerialView): AerialPattern {
  const { frequency } = at.station;
  const wavelength = SPEED_OF_LIGHT / frequency;
  const towards = (arrival: Arrival) => {
    const { horizontal, vertical, impedance } = model.at(frequency, arrival);
    const [h, v] = [C.abs(horizontal), C.abs(vertical)];
    return { h, v, total: Math.hypot(h, v), resistance: impedance.re };
  };
  const round = Array.from({ length: POINTS }, (_, i) => (2 * Math.PI * i) / POINTS);
  const level = round.map((angle) => ({ angle, ...towards({ azimuth: angle, elevation: 0 }) }));
  const { angle: azimuth } = level.reduce((best, p) => (p.total > best.total * (1 + 1e-9) ? p : best));
  const upright = round.slice(0, POINTS / 2 + 1).map((angle) => {
    const behind = Math.cos(angle) < 0;
    return { angle, ...towards({ azimuth: behind ? azimuth + Math.PI : azimuth, elevation: behind ? Math.PI - angle : angle }) };
  });
  const least = ROUNDING * Math.max(...level.map((p) => p.total), ...upright.map((p) => p.total));
  const point = ({ angle, h, v, total, resistance }: (typeof level)[number]): PatternPoint => {
    const decibels = (length: number): number | null =>
      length > least ? 10 * Math.log10(gainOf(length * length, resistance, wavelength)) : null;
    return { angle, gain: { total: decibels(total), horizontal: decibels(h), vertical: decibels(v) } };
  };
  return { elevation: 0, level: level.map(point), azimuth, upright: upright.map(point) };
}

/** Impedance over the band at the aerial's own terminals, without a feeder where it is one of wires. */
export interface AerialBand {
  readonly points: readonly { readonly frequency: number; readonly impedance: Complex }[];
  readonly resonances: readonly AerialResonance[];
}

const BAND_POINTS = 161;

export function aerialBand({ model: fed, wires, range, at }: AerialView): AerialBand {
  const model = wires?.bare ?? fed;
  const arrival = arrivalOf(at);
  return {
    points: Array.from({ length: BAND_POINTS }, (_, i) => {
      const frequency = range.from + ((range.to - range.from) * i) / (BAND_POINTS - 1);
      return { frequency, impedance: model.at(frequency, arrival).impedance };
    }),
    resonances: resonances(model, range.from, range.to),
  };
}
