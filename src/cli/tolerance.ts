import { assemble, standAt } from '#engine';
import { glance, leading, type Meant, type Tolerance, ToleranceRun, type Trim, trims } from '#find';
import { BadFile } from './bad-file.ts';
import { bold, dim } from './colour.ts';
import { printJson } from './figures-json.ts';
import { checked, load } from './load.ts';
import { pickStations } from './pick.ts';
import { progress } from './progress.ts';
import { table, wrap } from './table.ts';
import { whole } from './whole.ts';

export interface ToleranceOptions {
  readonly station?: string;
  readonly samples: string;
  readonly seed: string;
  readonly json?: boolean;
}

const WIDTH = 96;
const SLICE = 16;
const LEADING = 3;

/** `earshot tolerance`: what becomes of a set in many hands. */
export async function toleranceCommand(file: string, options: ToleranceOptions): Promise<void> {
  const samples = Number(options.samples);
  const seed = Number(options.seed);
  if (!Number.isInteger(samples) || samples < 16 || samples > 100_000)
    throw new BadFile(`--samples is ${options.samples}: give a whole number from 16 to 100000.`);
  if (!Number.isInteger(seed) || seed < 0 || seed >= 2 ** 32)
    throw new BadFile(`--seed is ${options.seed}: give a whole number from 0 to ${2 ** 32 - 1}.`);
  const loaded = load(file);
  const { place, set, listener } = whole(loaded);
  const names = place.stations.map((s) => s.name);
  const station =
    options.station === undefined
      ? checked(loaded, () => bestStation({ place, set, listener, station: 0 }))
      : pickStations(names, options.station)[0]!;
  const meant = { place, set, listener, station };
  const run = checked(loaded, () => new ToleranceRun(meant, { parts: loaded.parts, seed }));
  let stopped = false;
  const stop = (): void => {
    stopped = true;
  };
  process.once('SIGINT', stop);
  const line = progress();
  while (!stopped && run.built.length < samples) {
    run.step(Math.min(SLICE, samples - run.built.length));
    line.show(`${run.built.length} of ${samples} sets built on paper (Ctrl-C: what is known so far)`);
    await new Promise((done) => setImmediate(done));
  }
  line.clear();
  process.removeListener('SIGINT', stop);
  const result = run.result();
  const ways = trims(meant);
  if (options.json) {
    const name = (of: Tolerance['dial']['influences']) =>
      leading(run.scatters, of, run.scatters.length).map(({ scatter, share, slope }) => ({ key: scatter.key, share, slope }));
    printJson({
      file,
      station: names[station],
      samples: result.samples,
      heard: result.heard,
      understood: result.understood,
      covers: result.covers,
      dial: {
        frequency: result.dial.frequency,
        place: result.dial.place,
        explained: result.dial.influences?.explained ?? null,
        of: name(result.dial.influences),
      },
      loudness: {
        headroom: result.loudness.headroom,
        explained: result.loudness.influences?.explained ?? null,
        of: name(result.loudness.influences),
      },
      trims: ways,
      scatters: run.scatters.map(({ key, label, extent }) => ({ key, label, extent })),
    });
    return;
  }
  console.log(`${bold(`${loaded.name}: ${names[station]} at ${place.name}`)}\n${summary(result, set.tank.capacitor.rotation)}`);
  console.log(
    `\n${influenceTable('what moves the dial most', run, result.dial.influences, (s) => `${(s / 1e3).toFixed(0)} kHz`, ways, 'moves')}`,
  );
  console.log(
    `\n${influenceTable('what changes the loudness most', run, result.loudness.influences, (s) => `${s.toFixed(1)} dB`, ways, 'louder')}`,
  );
  console.log(
    `\n${table(
      [
        { head: 'to trim it', align: 'left' },
        { head: 'dial moves', align: 'right' },
        { head: 'louder by', align: 'right' },
      ],
      ways.map((w) => [w.words, kilohertz(w.moves), w.louder === null ? '-' : `${w.louder.toFixed(1)} dB`]),
    )}`,
  );
  console.log(
    dim(
      wrap('\nNot in it: errors of the aerial, whose wires are not solved anew. earshot tolerance FILE --json lists every scatter.', WIDTH),
    ),
  );
}

const kilohertz = (hertz: number): string => `${hertz >= 0 ? '+' : ''}${(hertz / 1e3).toFixed(0)} kHz`;

function bestStation(meant: Meant): number {
  const reception = standAt(meant.place, assemble(meant.set, meant.listener));
  return reception.signals.map((_, k) => glance(reception, k)).reduce((a, b) => (b.headroom > a.headroom ? b : a)).station;
}

function summary(t: Tolerance, rotation: number): string {
  const part = ({ value, error }: Tolerance['heard']): string =>
    `${(100 * value).toFixed(1)} %${error === null ? '' : ` +- ${(100 * error).toFixed(1)}`}`;
  const degrees = (share: number): string => `${((share * rotation * 180) / Math.PI).toFixed(0)}`;
  const { place, frequency } = t.dial;
  const { headroom } = t.loudness;
  return table(
    [
      { head: `of ${t.samples} sets built`, align: 'left' },
      { head: '', align: 'left' },
    ],
    [
      ['heard', part(t.heard)],
      ['understood', part(t.understood)],
      ['dial covers what it should', part(t.covers)],
      ['tank at the dial as meant', `within ${(100 * frequency).toFixed(1)} % (one standard deviation)`],
      ['dial reads, for 80 of 100', place ? `${degrees(place[0])} to ${degrees(place[1])} degrees` : 'never reached'],
      [
        'best band over what the ear needs',
        headroom ? `${headroom.map((h) => h.toFixed(0)).join(', ')} dB (10, 50, 90 of 100 below)` : 'nothing heard',
      ],
    ],
  );
}

function influenceTable(
  head: string,
  run: ToleranceRun,
  of: Tolerance['dial']['influences'],
  show: (slope: number) => string,
  ways: readonly Trim[],
  by: 'moves' | 'louder',
): string {
  if (!of) return dim(`${head}: too few samples to tell`);
  const rows = leading(run.scatters, of, LEADING).map(({ scatter, share, slope }) => {
    const mending = ways.filter(
      (w) => w.mends.some((m) => scatter.key.startsWith(m)) && (by === 'moves' ? w.moves !== 0 : w.louder !== null),
    );
    return [scatter.label, scatter.extent, `${(100 * share).toFixed(0)} %`, show(slope), mending[0]?.words ?? 'choose another piece'];
  });
  return `${table(
    [
      { head, align: 'left' },
      { head: 'spread', align: 'left' },
      { head: 'share', align: 'right' },
      { head: 'one deviation', align: 'right' },
      { head: 'mended by', align: 'left' },
    ],
    rows,
  )}\n${dim(`straight lines account for ${(100 * of.explained).toFixed(0)} % of it`)}`;
}
