import { improvements } from '#find';
import { LIBRARY, mergeParts, PART_CATEGORIES } from '#parts';
import { rewriteSetFile } from '#set-file';
import { onBench } from './bench.ts';
import { type Answer, type Document, readerOf } from './document.ts';

export interface AdoptGiven {
  readonly document: Document;
  readonly station: number;
  /** of the change, as advice named it */
  readonly key: string;
}

/** The document with a change that was advised made in it, all else as it was written; the same text where the change no longer helps. */
export function adopt({ document, station, key }: AdoptGiven): Promise<Answer<string>> {
  return onBench(document, async (bench) => {
    bench.stations(station);
    const parts = mergeParts(bench.file.drawer, LIBRARY);
    const all = bench.advice.get(station) ?? improvements(bench.situation, station, await bench.shelf());
    const found = all.find((i) => i.change.key === key);
    if (!found) return document.text;
    const { place, set, listener } = found.change.situation;
    const after = { ...bench.file, place, ...set, ear: listener.ear, programme: listener.programme };
    const names = PART_CATEGORIES.flatMap((c) => Object.keys(parts[c])).filter((name) => key.includes(name));
    return rewriteSetFile(document.text, after, names, { read: readerOf(document) });
  });
}
