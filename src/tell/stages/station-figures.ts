import { chainFigures, type Figure, type StationReport } from '#engine';

/** Every figure of one station, from mast to ear. */
export function stationFigures(r: StationReport): readonly Figure[] {
  return [
    ...r.signal.received.figures(),
    ...(r.heard?.ladder ?? []).map((l) => l.figure),
    ...chainFigures(r),
    ...(r.heard?.evaluation.hearing.figures() ?? []),
  ];
}
