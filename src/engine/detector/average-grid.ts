import type { Channel, ChannelLaw } from './channel-law.ts';
import type { MeasuredLaw } from './measured-law.ts';
import type { SeriesJunctionLaw } from './series-junction-law.ts';

/** How `TabulatedAverage` cuts the plane of amplitude A and output voltage V, and what it takes off the mean; r(A) = sqrt(A^2 + rounding^2) - rounding. */
export interface AverageGrid {
  /** [V] */
  readonly rounding: number;
  /** the cells lie along A and U = V - ridge r(A) */
  readonly ridge: number;
  /** U about which the averages bend most [V] */
  readonly centre: number;
  /** steps of the even part in A and in U [V] */
  readonly amplitudeStep: number;
  readonly outputStep: number;
  /** cells in A, and on either side of the centre in U: 2 N of one length, then N to each octave */
  readonly rows: number;
  readonly columns: number;
  /** amplitudes below this are always averaged directly: for laws whose curvature has steps [V] */
  readonly least: number;
  /** the current taken off the mean is that at rest at V + trough r(A), */
  readonly trough: number;
  /** and from about this amplitude on ever less of it, 1/(1 + (A/fade)^2)^2 [V]; Infinity: all of it at any */
  readonly fade: number;
  /** the law's slope and curvature are above zero everywhere */
  readonly logarithmic: boolean;
}

/** Steps within the voltage over which a law grows e-fold. */
const STEPS_PER_SCALE = 5;
/** Cells to an octave. */
const FEWEST = 16;
const MOST = 1024;

/**
 * Junction: the peak of the swing conducts, and the averages bend most where that comes to the end of the exponential, along V = A - bend.
 *
 * Taken off the mean is the current at the trough of the swing. It is the current at rest where there is no swing, and goes to the floor as the
 * swing grows; the current at rest itself would bring its bend at V = 0 into cells that are long there.
 */
export function junctionGrid(law: SeriesJunctionLaw): AverageGrid {
  const rounding = 4 * law.driveScale;
  return {
    rounding,
    ridge: 1,
    centre: rounding - law.bend,
    amplitudeStep: law.driveScale / STEPS_PER_SCALE,
    outputStep: law.outputScale / 4,
    rows: FEWEST,
    columns: 24,
    least: 0,
    trough: 1,
    fade: Number.POSITIVE_INFINITY,
    logarithmic: true,
  };
}

/**
 * Channel: the source end, which sees the gate's share of the RF, opens at an amplitude of its own; the drain end, which sees the rest, along
 * V = threshold - bias - (1 - gateDrive) A.
 *
 * The current at rest is taken off up to swings that pass the threshold; beyond, its own bend at V = threshold - bias would be alone in its place.
 */
export function channelGrid(law: ChannelLaw, channel: Channel): AverageGrid {
  const rounding = 6 * law.driveScale;
  const ridge = channel.gateDrive - 1;
  const amplitudeStep = law.driveScale / STEPS_PER_SCALE;
  const shut = channel.threshold - channel.gateBias;
  return {
    rounding,
    ridge,
    centre: shut + ridge * rounding,
    amplitudeStep,
    outputStep: law.outputScale / STEPS_PER_SCALE,
    // no longer than a step up to the threshold: the exponential below it is not held by its logarithm here
    rows: channel.gateDrive === 0 ? FEWEST : evenTo(shut / Math.abs(channel.gateDrive), amplitudeStep),
    columns: FEWEST,
    least: 0,
    trough: 0,
    fade: Math.max(32 * law.driveScale, 2 * Math.abs(shut)),
    logarithmic: false,
  };
}

/**
 * Measured table: bends wherever it was read, between its ends, and is straight beyond.
 *
 * Where it was read in even steps the strong swing's averages bend along grid lines: the cells in U are a fraction of such a step.
 *
 * @param scale - voltage over which such a body's law may be expected to grow e-fold [V]
 * @param spacing - of the table about zero [V]
 */
export function measuredGrid(law: MeasuredLaw, scale: number, spacing: number): AverageGrid {
  const step = scale / STEPS_PER_SCALE;
  const half = step / 2;
  const outputStep = spacing > half ? spacing / Math.ceil(spacing / half) : half;
  return {
    rounding: 8 * outputStep,
    ridge: 1,
    centre: 0,
    amplitudeStep: step,
    outputStep,
    rows: FEWEST,
    columns: evenTo(Math.max(-law.voltage[0]!, law.voltage.at(-1)!), outputStep),
    least: step * Math.min(8, Math.max(1, Math.ceil(spacing / step))),
    trough: 0,
    fade: Number.POSITIVE_INFINITY,
    logarithmic: false,
  };
}

/** Cells to an octave so that the even part reaches a given distance, if that is not too far. */
function evenTo(distance: number, step: number): number {
  return Math.ceil(Math.max(FEWEST, Math.min(MOST, distance / (2 * step))));
}
