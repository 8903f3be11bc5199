import { slopeCurve, type ToneLevels, Tuned, throughSamples } from '#engine';
import type { JobContext } from '#rpc';
import { type Bench, onBench } from '../bench.ts';
import type { Answer } from '../document.ts';
import { type CurvesGiven, evenly, standing } from './given.ts';

/** How a station's swing becomes sound on the slope of the tank. */
export interface SlopeCurves {
  /** of the dial [rad] */
  readonly angle: number;
  /** distance of the instantaneous frequency from the carrier [Hz], and amplitude across the detector there [V peak] */
  readonly offset: Float64Array;
  readonly amplitude: Float64Array;
  /** the test tone at full modulation, and with the power of programme */
  readonly rated: ToneWave;
  readonly average: ToneWave;
  /** the rated tone with the dial on either side of the station; ascending angles */
  readonly around: readonly SlopePoint[];
}

/** One period of a tone, from its greatest frequency or amplitude on. */
export interface ToneWave {
  /** peak deviation [Hz] or depth */
  readonly swing: number;
  /** share of the period, 0 to 1 */
  readonly phase: Float64Array;
  /** the modulating quantity: deviation [Hz], or depth */
  readonly modulation: Float64Array;
  /** amplitude across the detector [V peak], voltage at its output [V] */
  readonly amplitude: Float64Array;
  readonly output: Float64Array;
}

export interface SlopePoint {
  readonly angle: number;
  /** detuning in half bandwidths of the tank at rest, x = 2 Q df / f0 */
  readonly x: number;
  /** fundamental at the earpiece [dB SPL] */
  readonly level: number;
  /** over the fundamental [1] */
  readonly secondHarmonic: number;
  readonly thirdHarmonic: number;
}

const SLOPE_POINTS = 201;
const WAVE_POINTS = 96;
const AROUND_POINTS = 81;
/** How far to either side the dial is turned [half bandwidths at rest], at least; and how many times as far as the hump lies. */
const AROUND = 4;
const BEYOND = 3;
/** How far to either side the slope is drawn: so many swings, or bandwidths where these are more. */
const SWINGS = 3;
const BANDWIDTHS = 1.5;

/** Null where the dial does not reach the station. */
export function slopeCurves(given: CurvesGiven, context: JobContext): Promise<Answer<SlopeCurves | null>> {
  return onBench(given.document, async (bench) => {
    const { signal, heard } = standing(bench, given);
    if (!heard) return null;
    const { station } = given;
    const { frequency, modulation } = signal.received.station;
    const { rest, rated, average, angle } = heard.evaluation;
    const swing = modulation.kind === 'fm' ? modulation.deviation : 0;
    const half = Math.max(SWINGS * swing, BANDWIDTHS * (heard.sharpness?.bandwidth ?? 0));
    const offset = evenly(-half, half, SLOPE_POINTS);
    const { amplitude } = slopeCurve(
      bench.reception,
      station,
      angle,
      rest.output,
      offset.map((d) => frequency + d),
    );
    return {
      angle,
      offset,
      amplitude,
      rated: wave(rated),
      average: wave(average),
      around: await around(bench, station, heard.at.x, context),
    };
  });
}

function wave({ swing, balance }: ToneLevels): ToneWave {
  const phase = evenly(0, 1, WAVE_POINTS + 1);
  return {
    swing,
    phase,
    modulation: phase.map((p) => swing * Math.cos(2 * Math.PI * p)),
    amplitude: throughSamples(balance.amplitude, phase),
    output: throughSamples(balance.output, phase),
  };
}

async function around(bench: Bench, station: number, hump: number, context: JobContext): Promise<readonly SlopePoint[]> {
  const dial = bench.dial(station);
  if ('missing' in dial) return [];
  const { reception } = bench;
  const { tank } = reception.receiver;
  const { angle: middle, halfWidth } = dial.resonance;
  const direction = tank.capacitance(tank.rotation) > tank.capacitance(0) ? 1 : -1;
  const reach = Math.max(AROUND, BEYOND * Math.abs(hump), ...dial.points.map((p) => BEYOND * Math.abs(p.x))) * halfWidth;
  const angles = evenly(Math.max(0, middle - reach), Math.min(tank.rotation, middle + reach), AROUND_POINTS);
  const out: SlopePoint[] = [];
  for (const angle of angles) {
    await context.step(out.length / angles.length);
    const tuned = new Tuned(reception, station, angle);
    const { level, secondHarmonic, thirdHarmonic } = tuned.tone(tuned.ratedSwing);
    out.push({ angle, x: (direction * (middle - angle)) / halfWidth, level: level[1]!, secondHarmonic, thirdHarmonic });
  }
  return out;
}
