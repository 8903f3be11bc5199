import { type AerialWire, type WireCurrent, wireCurrents } from '#engine';
import type { JobContext } from '#rpc';
import { type AerialBand, type AerialPattern, aerialBand, aerialPattern, aerialView } from '#tell';
import { onBench } from '../bench.ts';
import type { Answer } from '../document.ts';
import type { CurvesGiven } from './given.ts';

/** An aerial over its band and all round. */
export interface AerialCurves {
  readonly method: string;
  /** [Hz] */
  readonly range: { readonly from: number; readonly to: number };
  readonly band: AerialBand;
  /** of an aerial made of wires, at the frequency of the station; null for any other */
  readonly wires: {
    readonly pattern: AerialPattern;
    readonly geometry: readonly AerialWire[];
    /** current along the wires, by the feed's [A/A] */
    readonly currents: readonly WireCurrent[];
  } | null;
}

/** Null where the coil is the aerial. */
export function aerialCurves({ document, station }: CurvesGiven, context: JobContext): Promise<Answer<AerialCurves | null>> {
  return onBench(document, async (bench) => {
    const { place, set } = bench.situation;
    if (set.aerial.kind === 'coil') return null;
    const view = aerialView(place, set.aerial, bench.stations(station));
    const { wires, model, range, at } = view;
    await context.step(0);
    const band = aerialBand(view);
    const method = wires?.bare.method ?? model.method;
    if (!wires) return { method, range, band, wires: null };
    await context.step(0.5);
    const { discretised, solution } = wires.bare.solved(at.station.frequency);
    const pattern = aerialPattern(view, wires.bare);
    return {
      method,
      range,
      band,
      wires: { pattern, geometry: discretised.structure.wires, currents: wireCurrents(discretised, solution) },
    };
  });
}
