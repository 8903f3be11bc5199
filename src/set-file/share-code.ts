import { packed } from './packed.ts';
import { readSetFile } from './read-set-file.ts';
import { MARK } from './share-mark.ts';

/** A document with the files it refers to, by the names that stand in it. */
export interface Shareable {
  readonly document: unknown;
  readonly files: Readonly<Record<string, string>>;
}

/** A document with those of the files that it refers to, as one short text: the fragment of a link. */
export async function shareCode({ document, files }: Shareable): Promise<string> {
  const text = JSON.stringify(document);
  const read = readSetFile(text, {
    read: (name) => {
      if (Object.hasOwn(files, name)) return files[name]!;
      throw new Error('it was not handed in');
    },
  });
  const used = read.ok ? read.source.files : Object.keys(files).filter((name) => text.includes(JSON.stringify(name)));
  return MARK + (await packed(JSON.stringify({ document, files: Object.fromEntries(used.map((name) => [name, files[name]])) })));
}

/** The code of a set on paper: without the drawer it was found in, which may be as long again and is not needed to build or hear it. */
export function sheetCode({ document, files }: Shareable): Promise<string> {
  const { drawer: _, ...set } = Object(document) as Readonly<Record<string, unknown>>;
  return shareCode({ document: set, files });
}
