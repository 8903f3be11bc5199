import { bestByStage, type Improvement, improvementSteps } from '#find';
import type { JobContext } from '#rpc';
import { gainWords, verdictSentence } from '#tell';
import { onBench } from './bench.ts';
import type { Answer, Document } from './document.ts';
import type { Advice, Advised } from './results.ts';

export interface AdviseGiven {
  readonly document: Document;
  readonly station: number;
}

/** What would help a station most: tens of changes, each worked out anew. */
export function advise({ document, station }: AdviseGiven, context: JobContext): Promise<Answer<Advised>> {
  return onBench(document, async (bench) => {
    bench.stations(station);
    const steps = improvementSteps(bench.situation, station, await bench.shelf());
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

const adviceOf = (i: Improvement): Advice => ({
  key: i.change.key,
  words: i.change.words,
  gain: i.gain,
  gainWords: gainWords(i),
  sii: i.sii,
  outcome: i.outcome,
});
