import { type BestDial, evaluate, type OutOfReach } from '#engine';
import type { JobContext } from '#rpc';
import { type Bench, onBench } from './bench.ts';
import type { Answer, Document } from './document.ts';

/** How a station stands on the dial, for a picture of it. */
export interface DialPicture {
  /** from least to greatest capacitance [rad] */
  readonly rotation: number;
  /** the tank alone: angle [rad] and resonance [Hz] */
  readonly table: readonly { readonly angle: number; readonly frequency: number }[];
  /** sound level of the rated tone over the whole dial, finely about the station [rad, dB SPL] */
  readonly loudness: readonly { readonly angle: number; readonly level: number }[];
  /** where each station of the place is loudest, on either side of its carrier [rad]; empty where the dial does not reach */
  readonly humps: readonly (readonly number[])[];
}

export interface DialGiven {
  readonly document: Document;
  readonly station: number;
}

const COARSE = 90;
const FINE = 96;
/** The fine part reaches so many times as far to either side as the humps stand apart. */
const REACH = 4;

/** The dial of a set, with the loudness of one station all round it. */
export function dial({ document, station }: DialGiven, context: JobContext): Promise<Answer<DialPicture>> {
  return onBench(document, async (bench) => {
    bench.stations(station);
    const { reception } = bench;
    const angles = anglesOf(bench, station);
    const loudness: { angle: number; level: number }[] = [];
    for (const angle of angles) {
      await context.step(loudness.length / angles.length);
      loudness.push({ angle, level: evaluate(reception, station, angle, false).rated.level[1]! });
    }
    return {
      rotation: reception.receiver.tank.rotation,
      table: bench.dialTable.flatMap(({ angle, frequency }) => (frequency === null ? [] : [{ angle, frequency }])),
      loudness,
      humps: reception.signals.map((_, k) => humpsOf(bench.dial(k))),
    };
  });
}

const humpsOf = (d: BestDial | OutOfReach): readonly number[] => ('missing' in d ? [] : d.points.map((p) => p.angle));

/** Evenly over the dial, and densely where the station is. */
function anglesOf(bench: Bench, station: number): readonly number[] {
  const { rotation } = bench.reception.receiver.tank;
  const even = Array.from({ length: COARSE + 1 }, (_, k) => (rotation * k) / COARSE);
  const d = bench.dial(station);
  const humps = humpsOf(d);
  if ('missing' in d || humps.length === 0) return even;
  const middle = d.resonance.angle;
  const half = REACH * Math.max(...humps.map((h) => Math.abs(h - middle)));
  const fine = Array.from({ length: FINE + 1 }, (_, k) => middle + half * ((2 * k) / FINE - 1));
  return [...even, ...fine, ...humps].filter((a) => a >= 0 && a <= rotation).sort((a, b) => a - b);
}
