import { useState } from 'preact/hooks';
import { type Problem, readTerrainCsv } from '#set-file';
import { writeExact, writeForPeople } from '#units';
import type { Desk } from '../../model/desk.ts';
import { textOf } from '../../model/open-files.ts';
import { editPlace } from '../../model/own-place.ts';
import { PickFile } from '../parts/PickFile.tsx';
import { Problems } from '../parts/Problems.tsx';

interface Props {
  readonly desk: Desk;
  /** index of the station, and its name */
  readonly index: number;
  readonly name: string;
}

type Taken = { readonly words: string } | { readonly why: string } | { readonly problems: readonly Problem[] };

/** Heights of the ground between a mast and here, out of a table. */
export function TakeTerrain({ desk, index, name }: Props) {
  const [taken, setTaken] = useState<Taken | null>(null);
  const open = async (file: File): Promise<void> => setTaken(await takeTerrain(desk, index, file));
  return (
    <div class="exchange">
      <p class="tools">
        <PickFile accept=".csv,.txt,text/csv" what="table of heights to take" onPick={([file]) => void open(file!)}>
          Take heights from CSV
        </PickFile>
      </p>
      <details class="others">
        <summary>how such a table is written</summary>
        <p class="about">
          The first row names two columns: distance, and height. Distances are from the foot of {name}’s mast and rise from 0 to where you
          are; heights are those of the ground above the sea. Values as you would say them, 1.2 km and 35 m, or with the unit in the head:
          distance (km), height (m). Commas between the cells, or semicolons.
        </p>
      </details>
      <div aria-live="polite">
        {taken && 'words' in taken && <p>{taken.words}</p>}
        {taken && 'why' in taken && <p class="complaint">{taken.why}</p>}
        {taken && 'problems' in taken && (
          <>
            <p>What is known of {name} is as it was. This stands in the way:</p>
            <Problems problems={taken.problems} />
          </>
        )}
      </div>
    </div>
  );
}

/** The heights are written into the place as one step that can be undone. */
async function takeTerrain(desk: Desk, index: number, file: File): Promise<Taken> {
  const text = await textOf(file);
  if (!text.ok) return { why: `${file.name}: ${text.why}. Nothing was changed.` };
  const read = readTerrainCsv(text.value, file.name);
  if (!read.ok) return { problems: read.problems };
  const { distance, height } = read.value;
  const written = (value: number): string => writeExact(value, 'length');
  editPlace(desk, ['place', 'stations', index, 'terrain'], { points: distance.map((d, k) => [written(d), written(height[k]!)]) });
  return {
    words: `Taken from ${file.name}: ${distance.length} heights over ${writeForPeople(distance.at(-1)!, 'length')}. Undo brings back what there was.`,
  };
}
