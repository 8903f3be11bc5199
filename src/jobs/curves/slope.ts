import {
  type BestDial,
  bestDial,
  type Evaluation,
  evaluate,
  type FlankPoint,
  type Modulation,
  type OutOfReach,
  type Reception,
  type Sharpness,
  sharpness,
  slopeCurve,
  type ToneLevels,
  Tuned,
  throughSamples,
} from '#engine';
import type { JobContext } from '#rpc';
import { onBench } from '../bench.ts';
import type { Answer } from '../document.ts';
import { type CurvesGiven, evenly, standing } from './given.ts';
import { supposed, type WhatIf } from './what-if.ts';

export interface SlopeGiven extends CurvesGiven {
  /** tried on the station and the tank; as they are where left out */
  readonly whatIf?: WhatIf | undefined;
}

/** How a station's swing becomes sound on the slope of the tank; all as supposed, but for what is named as built. */
export interface SlopeCurves {
  readonly kind: Modulation['kind'];
  /** of the station [Hz] */
  readonly carrier: number;
  /** of the dial, from least to greatest capacitance, and where it stands [rad] */
  readonly rotation: number;
  readonly angle: number;
  /** frequency of the test tone [Hz] */
  readonly tone: number;
  /** distance of the instantaneous frequency from the carrier [Hz], and amplitude across the detector there [V peak] */
  readonly offset: Float64Array;
  readonly amplitude: Float64Array;
  /** the same of set and station as they are; null where nothing else is supposed */
  readonly builtAmplitude: Float64Array | null;
  /** amplitude with the carrier at rest [V peak] */
  readonly rest: number;
  /** peak deviation of the station [Hz], or its depth: as supposed, and as it is */
  readonly modulation: number;
  readonly builtModulation: number;
  /** how many times the tank's losses are supposed */
  readonly losses: number;
  /** null where no resonance lies near */
  readonly sharpness: Sharpness | null;
  readonly builtSharpness: Sharpness | null;
  /** how far the tank's resonance runs as the dial turns [Hz/rad]; null where none lies near */
  readonly run: number | null;
  /** the test tone at full modulation, and with the power of programme */
  readonly rated: ToneWave;
  readonly average: ToneWave;
  /** where the station is loudest, loudest first */
  readonly humps: readonly FlankPoint[];
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
  /** the output without its distortion: mean and fundamental [V] */
  readonly pure: Float64Array;
  /** of the amplitude [V peak], and its depth: half their difference over half their sum */
  readonly least: number;
  readonly most: number;
  readonly depth: number;
  /** fundamental at the earpiece [dB SPL], and harmonics over it [1] */
  readonly level: number;
  readonly secondHarmonic: number;
  readonly thirdHarmonic: number;
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
/** How far to either side the dial is turned [half bandwidths at rest, as built], at least; and how many times as far as the humps lie. */
const AROUND = 4;
const BEYOND = 3;
/** How far to either side the slope is drawn: so many swings, or bandwidths as built where these are more. */
const SWINGS = 3;
const BANDWIDTHS = 1.25;
/** Turn of the dial over which its run is taken, as a share of the whole. */
const NUDGE = 1e-4;

/** Null where the dial does not reach the station. */
export function slopeCurves({ whatIf = {}, ...given }: SlopeGiven, context: JobContext): Promise<Answer<SlopeCurves | null>> {
  return onBench(given.document, async (bench) => {
    const { signal, heard } = standing(bench, given);
    if (!heard) return null;
    const { station } = given;
    const { frequency, modulation } = signal.received.station;
    const { angle } = heard.evaluation;
    const reception = supposed(bench.reception, station, whatIf);
    const same = reception === bench.reception;
    const evaluation = same ? heard.evaluation : evaluate(reception, station, angle, false);
    const { rated, average, rest } = evaluation;
    const asked = reception.signals[station]!.received.station.modulation;
    const swing = asked.kind === 'fm' ? asked.deviation : 0;
    const half = Math.max(SWINGS * swing, BANDWIDTHS * (heard.sharpness?.bandwidth ?? 0));
    const offset = evenly(-half, half, SLOPE_POINTS);
    const slope = (on: Reception, { rest: { output } }: Evaluation): Float64Array =>
      slopeCurve(
        on,
        station,
        angle,
        output,
        offset.map((d) => frequency + d),
      ).amplitude;
    const dial = same ? bench.dial(station) : bestDial(reception, station);
    const sharp = sharpnessAt(reception, station, angle, evaluation);
    const { rotation } = reception.receiver.tank;
    const nudge = angle < rotation / 2 ? NUDGE * rotation : -NUDGE * rotation;
    const nudged = sharpnessAt(reception, station, angle + nudge, evaluation);
    return {
      kind: modulation.kind,
      carrier: frequency,
      rotation,
      angle,
      tone: rated.frequency,
      offset,
      amplitude: slope(reception, evaluation),
      builtAmplitude: same ? null : slope(bench.reception, heard.evaluation),
      rest: rest.amplitude,
      modulation: peak(asked),
      builtModulation: peak(modulation),
      losses: whatIf.losses ?? 1,
      sharpness: sharp,
      builtSharpness: heard.sharpness,
      run: sharp && nudged && (nudged.frequency - sharp.frequency) / nudge,
      rated: wave(rated),
      average: wave(average),
      humps: 'missing' in dial ? [] : dial.points,
      around: 'missing' in dial ? [] : await around(reception, station, dial, reachOf(dial, bench.dial(station), angle), context),
    };
  });
}

const peak = (m: Modulation): number => (m.kind === 'fm' ? m.deviation : m.depth);

const sharpnessAt = ({ receiver, signals }: Reception, station: number, angle: number, { rest }: Evaluation): Sharpness | null =>
  sharpness(receiver, signals[station]!, angle, rest);

function wave({ swing, balance, level, secondHarmonic, thirdHarmonic }: ToneLevels): ToneWave {
  const phase = evenly(0, 1, WAVE_POINTS + 1);
  const amplitude = throughSamples(balance.amplitude, phase);
  const [least, most] = [Math.min(...amplitude), Math.max(...amplitude)];
  const [mean, first] = balance.harmonics;
  return {
    swing,
    phase,
    modulation: phase.map((p) => swing * Math.cos(2 * Math.PI * p)),
    amplitude,
    output: throughSamples(balance.output, phase),
    pure: phase.map((p) => mean!.re + first!.re * Math.cos(2 * Math.PI * p) - first!.im * Math.sin(2 * Math.PI * p)),
    least,
    most,
    depth: most + least > 0 ? (most - least) / (most + least) : 0,
    level: level[1]!,
    secondHarmonic,
    thirdHarmonic,
  };
}

/** How far to either side of the station the dial is turned [rad]. */
function reachOf(dial: BestDial, built: BestDial | OutOfReach, angle: number): number {
  const { resonance } = dial;
  const humps = dial.points.map((p) => BEYOND * Math.abs(p.angle - resonance.angle));
  return Math.max(AROUND * ('missing' in built ? dial : built).resonance.halfWidth, Math.abs(angle - resonance.angle), ...humps);
}

async function around(
  reception: Reception,
  station: number,
  dial: BestDial,
  reach: number,
  context: JobContext,
): Promise<readonly SlopePoint[]> {
  const { tank } = reception.receiver;
  const { angle: middle, halfWidth } = dial.resonance;
  const direction = tank.capacitance(tank.rotation) > tank.capacitance(0) ? 1 : -1;
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
