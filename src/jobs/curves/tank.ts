import { type DialPoint, response, type Sharpness } from '#engine';
import { onBench } from '../bench.ts';
import type { Answer } from '../document.ts';
import { type CurvesGiven, evenly, standing } from './given.ts';

/** The tank over frequency where the dial stands, and over its dial. */
export interface TankCurves {
  /** of the dial [rad] */
  readonly angle: number;
  /** [Hz] */
  readonly frequency: Float64Array;
  /** amplitude at the detector for one volt of e.m.f., under its greatest [dB] */
  readonly response: Float64Array;
  /** stations of the place within that span */
  readonly stations: readonly { readonly name: string; readonly frequency: number; readonly response: number }[];
  /** null where the dial does not reach the station */
  readonly sharpness: Sharpness | null;
  /** the tank alone over its dial */
  readonly dial: readonly DialPoint[];
}

const POINTS = 241;
/** Span to either side, in bandwidths; and where the tank does not reach, as a share of the carrier. */
const BANDWIDTHS = 5;
const SHARE = 0.05;

export function tankCurves(given: CurvesGiven): Promise<Answer<TankCurves>> {
  return onBench(given.document, (bench) => {
    const { receiver, signals } = bench.reception;
    const { tank, detector } = receiver;
    const { signal, heard } = standing(bench, given);
    const carrier = signal.received.station.frequency;
    const angle = heard?.at.angle ?? given.angle ?? tank.rotation / 2;
    const sharpness = heard?.sharpness ?? null;
    const half = sharpness ? Math.min(BANDWIDTHS * sharpness.bandwidth, carrier / 2) : SHARE * carrier;
    const conductance = heard?.evaluation.rest.radioConductance ?? 1 / detector.zeroBiasResistance;
    const at = (frequencies: Float64Array): Float64Array => response(receiver, signal.arrival, angle, conductance, carrier, frequencies);
    const frequency = evenly(carrier - half, carrier + half, POINTS);
    const amplitude = at(frequency);
    const within = signals.map((s) => s.received.station).filter((s) => Math.abs(s.frequency - carrier) <= half);
    const stations = at(Float64Array.from(within, (s) => s.frequency));
    const top = Math.max(...amplitude, ...stations);
    const decibels = (a: number): number => 20 * Math.log10(a / top);
    return {
      angle,
      frequency,
      response: amplitude.map(decibels),
      stations: within.map((s, i) => ({ name: s.name, frequency: s.frequency, response: decibels(stations[i]!) })),
      sharpness,
      dial: bench.dialTable,
    };
  });
}
