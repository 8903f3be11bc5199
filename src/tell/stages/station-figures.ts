import { chainFigures, type Figure, hearingFigures, receivedFigures, type StationReport } from '#engine';

/** Every figure of one station, from mast to ear. */
export function stationFigures(r: StationReport): readonly Figure[] {
  return [
    ...receivedFigures(r.signal.received),
    ...(r.heard?.ladder ?? []).map((l) => l.figure),
    ...chainFigures(r),
    ...(r.heard ? hearingFigures(r.heard.evaluation.hearing) : []),
  ];
}
