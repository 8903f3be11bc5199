import { type AerialWire, type SpacePoint, type WireCurrent, type WiresDescription, wireCurrents } from '#engine';
import type { JobContext } from '#rpc';
import { type AerialBand, type AerialPattern, aerialBand, aerialPattern, aerialView, modelPattern } from '#tell';
import { onBench } from '../bench.ts';
import type { Answer } from '../document.ts';
import { type StationOutline, stationOutline } from '../results.ts';
import type { CurvesGiven } from './given.ts';
import { type PlainShape, plainShape } from './plain-shape.ts';

/** An aerial over its band and all round. */
export interface AerialCurves {
  readonly method: string;
  /** [Hz] */
  readonly range: { readonly from: number; readonly to: number };
  readonly band: AerialBand;
  readonly stations: readonly StationOutline[];
  /** at the frequency of the station */
  readonly pattern: AerialPattern;
  /** of an aerial made of wires, at that frequency; null for any other */
  readonly wires: {
    readonly description: WiresDescription;
    readonly geometry: readonly AerialWire[];
    readonly feed: SpacePoint;
    /** current along the wires, by the feed's [A/A] */
    readonly currents: readonly WireCurrent[];
  } | null;
  /** what any other looks like; null where nothing is known of its shape */
  readonly shape: PlainShape | null;
}

/** Null where the coil is the aerial. */
export function aerialCurves({ document, station }: CurvesGiven, context: JobContext): Promise<Answer<AerialCurves | null>> {
  return onBench(document, async (bench) => {
    const { place, set } = bench.situation;
    const { aerial } = set;
    if (aerial.kind === 'coil') return null;
    const view = aerialView(place, aerial, bench.stations(station));
    const { wires, model, range, at } = view;
    await context.step(0);
    const band = aerialBand(view);
    const method = wires?.bare.method ?? model.method;
    const stations = bench.reception.signals.map(stationOutline);
    if (!wires || aerial.kind !== 'wires') {
      const shape = aerial.kind === 'wires' ? null : plainShape(aerial, place.site.height);
      return { method, range, band, stations, pattern: modelPattern(view), wires: null, shape };
    }
    await context.step(0.5);
    const { description, bare } = wires;
    const { discretised, solution } = bare.solved(at.station.frequency);
    return {
      method,
      range,
      band,
      stations,
      pattern: aerialPattern(view, bare),
      wires: {
        description,
        geometry: discretised.structure.wires,
        feed: discretised.feedPoint,
        currents: wireCurrents(discretised, solution),
      },
      shape: null,
    };
  });
}
