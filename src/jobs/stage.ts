import { aerialGroups, detectorGroups, earGroups, type Group, phonesGroups, placeGroups, tankGroups } from '#tell';
import type { Bench } from './bench.ts';
import { onBench } from './bench.ts';
import type { Answer, Document } from './document.ts';

export type StageName = 'place' | 'aerial' | 'tank' | 'detector' | 'phones' | 'ear';

export interface StageGiven {
  readonly document: Document;
  readonly stage: StageName;
  /** index of the one station wanted; all where left out */
  readonly station?: number | undefined;
}

/** Figures of one stage with their workings, as the command of the stage tells them. */
export function stage({ document, stage: name, station }: StageGiven): Promise<Answer<readonly Group[]>> {
  return onBench(document, (bench) => groups(bench, name, bench.stations(station)));
}

function groups(bench: Bench, name: StageName, chosen: readonly number[]): readonly Group[] {
  const { file, parts, situation, reception } = bench;
  switch (name) {
    case 'place':
      return placeGroups(chosen.map((k) => reception.signals[k]!.received));
    case 'aerial':
      return aerialGroups(situation.place, situation.set.aerial, chosen);
    case 'tank':
      return tankGroups(
        reception,
        chosen.map((k) => bench.report(k)),
      );
    case 'detector':
      return detectorGroups(file, parts);
    case 'phones':
      return phonesGroups(file, parts);
    case 'ear':
      return earGroups(chosen.map((k) => bench.report(k)));
  }
}
