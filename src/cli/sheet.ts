import { writeFileSync } from 'node:fs';
import { GivenError } from '#engine';
import { sheetCode } from '#set-file';
import { buildSheet, type PaperName, type SheetInput } from '#sheet';
import { givenProblem } from '#tell';
import { BadFile } from './bad-file.ts';
import { type Loaded, load, reader, readText, refused } from './load.ts';
import { pickStations } from './pick.ts';
import { whole } from './whole.ts';

export interface SheetOptions {
  readonly out: string;
  readonly paper: PaperName;
  readonly station?: string;
}

/** `earshot sheet`: a set on paper, to be built from. */
export async function sheetCommand(file: string, { out, paper, station }: SheetOptions): Promise<void> {
  const loaded = load(file);
  const { place } = whole(loaded);
  const names = place.stations.map((s) => s.name);
  const data = await made(loaded, {
    file: { ...loaded, place },
    parts: loaded.parts,
    station: station === undefined ? undefined : pickStations(names, station)[0],
    paper,
    code: await codeOf(loaded),
  });
  try {
    writeFileSync(out, data);
  } catch (e) {
    throw new BadFile(`${out}: it cannot be written (${(e as NodeJS.ErrnoException).code})\n  Give a path in a folder that is there.`);
  }
  console.log(`${out}: print it at 100 %, on ${paper === 'a4' ? 'A4' : 'Letter'}, and check its rulers.`);
}

function codeOf({ file, source }: Loaded): Promise<string> {
  const read = reader(file);
  return sheetCode({ document: JSON.parse(readText(file)), files: Object.fromEntries(source.files.map((name) => [name, read(name)])) });
}

async function made(loaded: Loaded, input: SheetInput): Promise<Uint8Array> {
  try {
    return await buildSheet(input);
  } catch (e) {
    if (!(e instanceof GivenError)) throw e;
    throw refused(loaded.file, [givenProblem(e, loaded.source)]);
  }
}
