import { type FieldStep, overBulge, type Place, type TerrainProfile } from '#engine';
import { onBench } from '../bench.ts';
import type { Answer, Document } from '../document.ts';
import { type StationOutline, stationOutline } from '../results.ts';

/** Fields at a place, and the ground between. */
export interface PlaceCurves {
  readonly site: Pick<Place['site'], 'height'>;
  readonly stations: readonly StationField[];
}

export interface StationField extends StationOutline {
  readonly method: string;
  /** one standard deviation below and above the median [V/m rms] */
  readonly low: number;
  readonly high: number;
  /** from the free-space field down, in dB */
  readonly steps: readonly FieldStep[];
  readonly mastHeight: number;
  /** the ground from the mast to the site as the wave meets it, the bulge of the earth put on; null where no profile is given */
  readonly profile: TerrainProfile | null;
}

export function placeCurves({ document }: { readonly document: Document }): Promise<Answer<PlaceCurves>> {
  return onBench(document, ({ reception: { signals, place } }) => ({
    site: { height: place.site.height },
    stations: signals.map((signal, k) => {
      const { station, field, spread, method, steps } = signal.received;
      const deviation = 10 ** (spread / 20);
      return {
        ...stationOutline(signal, k),
        method,
        low: field / deviation,
        high: field * deviation,
        steps,
        mastHeight: station.mastHeight,
        profile: station.terrain ? overBulge(station.terrain) : null,
      };
    }),
  }));
}
