import type { Figure } from '#engine';
import type { JobContext } from '#rpc';
import { stationFigures } from '#tell';
import { onBench } from './bench.ts';
import type { Answer } from './document.ts';
import type { EvaluateGiven } from './evaluate.ts';
import { type StationResult, stationResult } from './results.ts';

/** One station through the set, with every figure from mast to ear, each with its working. */
export interface StationFigures extends StationResult {
  readonly figures: readonly Figure[];
}

/** Stations as `evaluate` gives them, and every figure of each. */
export function figures({ document, station, angle }: EvaluateGiven, context: JobContext): Promise<Answer<readonly StationFigures[]>> {
  return onBench(document, async (bench) => {
    const wanted = bench.stations(station);
    const told: StationFigures[] = [];
    for (const k of wanted) {
      await context.step(told.length / wanted.length);
      const report = bench.report(k, angle);
      told.push({ ...stationResult(report, k), figures: stationFigures(report) });
    }
    return told;
  });
}
