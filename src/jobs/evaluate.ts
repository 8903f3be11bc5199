import { dialRange } from '#engine';
import type { JobContext } from '#rpc';
import { cautions } from '#tell';
import { type Bench, onBench } from './bench.ts';
import type { Answer, Document } from './document.ts';
import { type Evaluated, type Outline, type StationResult, stationOutline, stationResult } from './results.ts';

/** Reads a document: what it is, its stations and their fields, the span of its dial. */
export function outline(document: Document): Promise<Answer<Outline>> {
  return onBench(document, outlineOf);
}

function outlineOf({ file, parts, reception }: Bench): Outline {
  const { receiver, signals, place } = reception;
  const arrival = signals[0]?.arrival;
  return {
    name: file.name,
    notes: file.notes,
    place: place.name,
    stations: signals.map(stationOutline),
    parts,
    turns: file.tank.coil.turns,
    dial: { rotation: receiver.tank.rotation, ...(arrival ? dialRange(receiver, arrival) : { lowest: null, highest: null }) },
  };
}

/** What a screen shows first: the document, and one station of it with the dial where it is best. */
export interface Glance {
  readonly outline: Outline;
  readonly station: StationResult;
}

/** @param given - a station that the place does not have stands for its first */
export function glance({ document, station }: { readonly document: Document; readonly station: number }): Promise<Answer<Glance>> {
  return onBench(document, (bench) => {
    const outlined = outlineOf(bench);
    const index = station < outlined.stations.length ? station : 0;
    return { outline: outlined, station: stationResult(bench.report(index), index) };
  });
}

export interface EvaluateGiven {
  readonly document: Document;
  /** index of the one station wanted; all where left out */
  readonly station?: number | undefined;
  /** where the dial is left [rad]; where it is best for each station, if left out */
  readonly angle?: number | undefined;
}

/** Stations of a document through its set, from mast to ear: levels, ladder and verdict, without advice. */
export function evaluate({ document, station, angle }: EvaluateGiven, context: JobContext): Promise<Answer<Evaluated>> {
  return onBench(document, async (bench) => {
    const wanted = bench.stations(station);
    const reports = [];
    for (const k of wanted) {
      await context.step(reports.length / wanted.length);
      reports.push(bench.report(k, angle));
    }
    return {
      stations: reports.map((r, i) => stationResult(r, wanted[i]!)),
      cautions: cautions(bench.situation.set, reports),
    };
  });
}
