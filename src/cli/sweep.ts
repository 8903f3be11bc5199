import { assemble, type Figure, reportStation, standAt } from '#engine';
import { stationFigures, valueText } from '#tell';
import { DIMENSIONS, writeForPeople } from '#units';
import { BadFile } from './bad-file.ts';
import { figuresJson, printJson } from './figures-json.ts';
import { checked } from './load.ts';
import { pickStations } from './pick.ts';
import { table, wrap } from './table.ts';
import { variable } from './vary.ts';
import { whole } from './whole.ts';

export interface SweepOptions {
  readonly steps: string;
  readonly log?: boolean;
  readonly station?: string;
  readonly show?: string;
  readonly json?: boolean;
  readonly csv?: boolean;
}

const DEFAULT = 'ladder.soundLevel,ladder.overThreshold,ladder.sii,sound.secondHarmonic,tank.loadedQ';

/** `earshot sweep`: one number of the file over a range; every row is the whole set evaluated anew, the dial set afresh. */
export function sweepCommand(file: string, path: string, from: string, to: string, options: SweepOptions): void {
  const steps = Number(options.steps);
  if (!Number.isInteger(steps) || steps < 2 || steps > 1000)
    throw new BadFile(`--steps is ${options.steps}: a table has 2 to 1000 rows. Give a whole number.`);
  const field = variable(file, path);
  const start = field.value(from);
  const end = field.value(to);
  if (options.log && !(start * end > 0))
    throw new BadFile(`--log from ${from} to ${to}: equal ratios need both ends on one side of zero. Leave --log out.`);
  const wanted = (options.show ?? DEFAULT).split(',').map((s) => s.trim());
  const rows = Array.from({ length: steps }, (_, k) => {
    const t = k / (steps - 1);
    const value = options.log ? start * (end / start) ** t : start + t * (end - start);
    const loaded = field.with(value);
    const { place, set, listener } = whole(loaded);
    const [index] = pickStations(
      place.stations.map((s) => s.name),
      options.station ?? place.stations[0]?.name,
    );
    const report = checked(loaded, () => reportStation(standAt(place, assemble(set, listener)), index!));
    const figures = stationFigures(report);
    return { value, outcome: report.verdict.outcome, figures: wanted.map((w) => figures.find((f) => f.name === w)) };
  });
  const known = rows.flatMap((r) => r.figures).filter((f): f is Figure => f !== undefined);
  for (const w of wanted)
    if (!known.some((f) => f.name === w))
      throw new BadFile(`--show ${w}: no row has such a figure. "earshot hear ${file} --json" names them all.`);
  if (options.json)
    printJson({
      file,
      path,
      rows: rows.map((r) => ({
        value: { value: r.value, unit: DIMENSIONS[field.dimension].symbol || '1', method: 'varied' },
        outcome: r.outcome,
        figures: figuresJson(r.figures.filter((f): f is Figure => f !== undefined)),
      })),
    });
  else if (options.csv) {
    console.log([path, ...wanted, 'outcome'].join(','));
    for (const r of rows) console.log([r.value, ...r.figures.map((f) => f?.value ?? ''), r.outcome].join(','));
  } else {
    const head = (name: string): string => wrap(known.find((f) => f.name === name)!.label, 18);
    console.log(
      table(
        [
          { head: path, align: 'right' },
          ...wanted.map((w) => ({ head: head(w), align: 'right' as const })),
          { head: 'heard', align: 'left' },
        ],
        rows.map((r) => [writeForPeople(r.value, field.dimension), ...r.figures.map((f) => (f ? valueText(f) : 'none')), r.outcome]),
      ),
    );
  }
}
