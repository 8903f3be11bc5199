import { useEffect } from 'preact/hooks';
import type { PaperName } from '#sheet';
import { savedFile } from '../../model/saved-file.ts';
import { sheetMaking } from '../../model/sheet-making.ts';
import { Problems } from '../parts/Problems.tsx';
import { saveFile } from '../parts/save.ts';
import type { ViewProps } from '../view-props.ts';
import { Pages } from './Pages.tsx';
import './sheet.css';

/** A set is laid out anew once its numbers rest [ms]. */
const REST = 300;

/** The sheet to build the set from, as it will be printed. */
export function SheetView({ desk }: ViewProps) {
  const { bench } = desk;
  const making = sheetMaking();
  const [document, station, paper] = [bench.document.value, bench.station.value, making.paper.value];
  const given = { document, station, paper };
  useEffect(() => {
    const wait = setTimeout(() => void making.layOut(given), making.state.peek() ? REST : 0);
    return () => clearTimeout(wait);
  }, [document, station, paper]);
  const state = making.state.value;
  const busy = making.busy.value;
  const save = async (): Promise<void> => {
    const bytes = await making.file(given);
    if (bytes) saveFile(savedFile(desk.value.value).name.replace(/json$/, 'pdf'), bytes, 'application/pdf');
  };
  return (
    <div class="view sheet-view" aria-busy={busy !== null}>
      <div class="sheet-about">
        <h2>Sheet to build it from</h2>
        <p class="about">
          Circuit, parts, coil, aerial, order of assembly, dial and trimming, for {bench.shown.value?.name ?? 'the station picked'}. Print
          it at 100 %, never “fit to page”: the strip to wind by, the coil and the dial are true to size. Hold a ruler to the printed ones
          first; 100 mm there must be 100 mm.
        </p>
        <p class="tools">
          <label>
            paper{' '}
            <select
              value={paper}
              onChange={(e) => {
                making.paper.value = e.currentTarget.value as PaperName;
              }}
            >
              <option value="a4">A4</option>
              <option value="letter">Letter</option>
            </select>
          </label>
          <button type="button" class="main" disabled={state?.kind !== 'pages' || busy === 'file'} onClick={() => void save()}>
            save as PDF
          </button>
          <button type="button" disabled={state?.kind !== 'pages'} onClick={() => print()}>
            print
          </button>
        </p>
        <p aria-live="polite" class="sheet-state">
          {busy === 'pages' && 'Laying out the pages. It tries every part you could put in instead, so it takes a few seconds.'}
          {busy === 'file' && 'Writing the file.'}
          {busy === null && state?.kind === 'pages' && `${state.pages.length} pages.`}
        </p>
        {state?.kind === 'failed' && (
          <p class="notice bad" role="alert">
            The sheet could not be made: {state.why}. Your set is as it was.
          </p>
        )}
        {state?.kind === 'refused' && (
          <div class="notice bad" role="alert">
            <p>There is no sheet of this set as it is:</p>
            <Problems problems={state.problems} />
          </div>
        )}
      </div>
      {state?.kind === 'pages' && <Pages pages={state.pages} paper={paper} />}
    </div>
  );
}
