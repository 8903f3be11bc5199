import { type DetectorTransfer, detectorTransfer, type RestPoint } from '#engine';
import { onBench } from '../bench.ts';
import type { Answer } from '../document.ts';
import { type CurvesGiven, evenly, inRatios, standing } from './given.ts';

/** The detector by itself, and where a station works it. */
export interface DetectorCurves {
  /** the law: current [A] against the voltage from tank to output [V], the output where the station holds it */
  readonly law: { readonly voltage: Float64Array; readonly current: Float64Array };
  /** steady output [V] against radio amplitude across the law [V peak], both to be drawn in ratios */
  readonly transfer: DetectorTransfer & { readonly amplitude: Float64Array };
  /** null where the dial does not reach the station */
  readonly point: RestPoint | null;
}

const POINTS = 161;
/** Span of the law where no station swings it, and about the swing: as steep as it is, a little beyond shows nothing else [V; share of the swing]. */
const STILL = 0.25;
const BEYOND = 0.03;
const SHARE_BEYOND = 0.02;
/** Least span of the transfer [V peak]: from well within the square law to the usual end of it. */
const WEAKEST = 1e-4;
const STRONGEST = 1;

export function detectorCurves(given: CurvesGiven): Promise<Answer<DetectorCurves>> {
  return onBench(given.document, (bench) => {
    const { receiver } = bench.reception;
    const point = standing(bench, given).heard?.evaluation.rest ?? null;
    const reach = point ? point.amplitude * (1 + SHARE_BEYOND) + BEYOND : STILL;
    // the output pushes the middle of the swing to where less current flows
    const middle = point ? -point.output : 0;
    const voltage = evenly(middle - reach, middle + reach, POINTS);
    const strongest = Math.max(STRONGEST, 2 * (point?.amplitude ?? 0));
    const weakest = Math.min(WEAKEST, (point?.amplitude || WEAKEST) / 2);
    const amplitude = inRatios(weakest, strongest, POINTS);
    return {
      law: { voltage, current: voltage.map((v) => receiver.detector.law.current(v, point?.output ?? 0)) },
      transfer: { amplitude, ...detectorTransfer(receiver, amplitude) },
      point,
    };
  });
}
