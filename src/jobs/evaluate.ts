import { dialRange } from '#engine';
import { bestByStage, improvementSteps } from '#find';
import { LIBRARY, mergeParts } from '#parts';
import type { JobContext } from '#rpc';
import { shelfOf } from '#set-file';
import { cautions, verdictSentence } from '#tell';
import { onBench } from './bench.ts';
import type { Answer, Document } from './document.ts';
import { type Advised, adviceOf, type Evaluated, type Outline, stationOutline, stationResult } from './results.ts';

/** Reads a document: what it is, its stations and their fields, the span of its dial. */
export function outline(document: Document): Promise<Answer<Outline>> {
  return onBench(document, ({ file, parts, reception }) => {
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

export interface AdviseGiven {
  readonly document: Document;
  readonly station: number;
}

/** What would help a station most: tens of changes, each worked out anew. */
export function advise({ document, station }: AdviseGiven, context: JobContext): Promise<Answer<Advised>> {
  return onBench(document, async (bench) => {
    bench.stations(station);
    const steps = improvementSteps(bench.situation, station, shelfOf(mergeParts(bench.file.drawer, LIBRARY)));
    for (;;) {
      const step = steps.next();
      if (step.done) {
        const all = step.value;
        bench.advice.set(station, all);
        return {
          sentence: verdictSentence(bench.report(station), all[0]),
          all: all.map(adviceOf),
          bestByStage: bestByStage(all).map(adviceOf),
        };
      }
      await context.step(step.value);
    }
  });
}
