import { assemble, reportStation, type StationReport, standAt } from '#engine';
import { bestByStage, type Improvement, improvements } from '#find';
import { LIBRARY, mergeParts } from '#parts';
import { shelfOf } from '#set-file';
import { cautions, gainWords, ladderRows, stationFigures, verdictSentence } from '#tell';
import { bold, dim, green, red, yellow } from './colour.ts';
import { figuresJson, printJson } from './figures-json.ts';
import { checked, type Loaded, load } from './load.ts';
import { pickStations, workings } from './pick.ts';
import { table, wrap } from './table.ts';
import { whole } from './whole.ts';

export interface HearOptions {
  readonly station?: string;
  readonly json?: boolean;
  readonly working?: string;
  readonly advice: boolean;
}

const WIDTH = 96;

/** `earshot hear`: every station from mast to ear. */
export function hearCommand(file: string, options: HearOptions): void {
  const loaded = load(file);
  checked(loaded, () => hear(loaded, options));
}

function hear(loaded: Loaded, options: HearOptions): void {
  const { file } = loaded;
  const { place, set, listener } = whole(loaded);
  const reception = standAt(place, assemble(set, listener));
  const chosen = pickStations(
    place.stations.map((s) => s.name),
    options.station,
  );
  const reports = chosen.map((k) => reportStation(reception, k));
  if (options.working !== undefined) {
    console.log(
      workings(
        reports.map((r) => ({ heading: r.station, figures: stationFigures(r) })),
        options.working,
      ),
    );
    return;
  }
  const shelf = shelfOf(mergeParts(loaded.drawer, LIBRARY));
  const advice = chosen.map((k) => (options.advice ? improvements({ place, set, listener }, k, shelf) : []));
  const warnings = cautions(set, reports);
  if (options.json) {
    printJson({
      file,
      name: loaded.name,
      place: place.name,
      stations: reports.map((r, i) => stationJson(r, advice[i]!)),
      cautions: warnings,
    });
    return;
  }
  console.log(bold(`${loaded.name} at ${place.name}`));
  reports.forEach((r, i) => {
    console.log(`\n${stationText(r, advice[i]!)}`);
  });
  if (warnings.length > 0) console.log(`\n${bold('Cautions')}\n${warnings.map((w) => wrap(`- ${w}`, WIDTH, '  ')).join('\n')}`);
  console.log(`\n${dim('earshot hear FILE --working NAME shows how a figure came about; --json names them all.')}`);
}

function stationJson(r: StationReport, advice: readonly Improvement[]): Record<string, unknown> {
  const { station } = r.signal.received;
  return {
    name: r.station,
    frequency: { value: station.frequency, unit: 'Hz', method: 'given' },
    sentence: verdictSentence(r, advice[0]),
    verdict: r.verdict,
    remarks: r.remarks,
    figures: figuresJson(stationFigures(r)),
    advice: advice.map((a) => ({
      key: a.change.key,
      change: a.change.words,
      gain: { value: a.gain, unit: 'dB', method: 'the changed set evaluated anew' },
      sii: a.sii,
      outcome: a.outcome,
    })),
  };
}

function stationText(r: StationReport, advice: readonly Improvement[]): string {
  const { station, distance } = r.signal.received;
  const mhz = station.frequency >= 3e6 ? `${(station.frequency / 1e6).toFixed(1)} MHz` : `${(station.frequency / 1e3).toFixed(0)} kHz`;
  const out = [bold(`${r.station}, ${mhz}, ${(distance / 1e3).toFixed(1)} km`)];
  const rows = ladderRows(r);
  if (rows.length > 0)
    out.push(
      table(
        [
          { head: 'from mast to ear', align: 'left' },
          { head: 'level', align: 'right' },
          { head: 'cost', align: 'right' },
        ],
        rows.map((l) => [l.label, l.value, l.costliest ? yellow(`${l.cost} *`) : l.cost]),
      ),
    );
  const paint =
    r.verdict.outcome === 'clear' || r.verdict.outcome === 'understandable' ? green : r.verdict.outcome === 'faint' ? yellow : red;
  out.push(paint(wrap(verdictSentence(r, advice[0]), WIDTH)));
  if (rows.some((l) => l.costliest)) out.push(dim('* the costliest step between aerial and earpiece'));
  if (advice.length > 1)
    out.push(
      table(
        [
          { head: 'what would help, the best of each stage', align: 'left' },
          { head: 'gain', align: 'right' },
          { head: 'then', align: 'left' },
        ],
        bestByStage(advice).map((a) => [a.change.words, gainWords(a).slice(1, -1), a.outcome]),
      ),
    );
  out.push(...r.remarks.map((t) => dim(wrap(`- ${t}`, WIDTH, '  '))));
  return out.join('\n');
}
