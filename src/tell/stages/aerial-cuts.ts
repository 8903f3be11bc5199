import {
  type AerialResonance,
  azimuthCut,
  type Complex,
  elevationCut,
  type PatternPoint,
  patternSummary,
  resonances,
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
