import { drawDots } from '#draw';
import { bestStation, dialSpread, handBuilt, leading, type Tolerance, ToleranceRun, type Trim, trims } from '#find';
import {
  type Builds,
  dotsOfBuilds,
  GIVE_OR_TAKE,
  type InfluenceWords,
  influenceWords,
  NOT_SCATTERED,
  toleranceLines,
  trimRows,
} from '#tell';
import { BadFile } from './bad-file.ts';
import { bold, dim } from './colour.ts';
import { printJson } from './figures-json.ts';
import { checked, type Loaded, load } from './load.ts';
import { pickStations } from './pick.ts';
import { progress } from './progress.ts';
import { table, wrap } from './table.ts';
import { whole } from './whole.ts';
import { writeText } from './write-text.ts';

export interface ToleranceOptions {
  readonly station?: string;
  readonly samples: string;
  readonly seed: string;
  readonly picture?: string;
  readonly json?: boolean;
}

const WIDTH = 96;
/** Room for what a line tells of. */
const LABELS = 34;
const SLICE = 16;

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
    options.station === undefined ? checked(loaded, () => bestStation({ place, set, listener })) : pickStations(names, options.station)[0]!;
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
  const done: Done = { file, loaded, names, station, place: place.name, rotation: set.tank.capacitor.rotation, run, ways: trims(meant) };
  if (options.picture !== undefined) writeText(options.picture, pictureOf(done));
  if (options.json) printJson(asJson(done));
  else console.log(asText(done));
}

/** A set that was built over and over. */
interface Done {
  readonly file: string;
  readonly loaded: Loaded;
  readonly names: readonly string[];
  readonly station: number;
  readonly place: string;
  /** [rad] */
  readonly rotation: number;
  readonly run: ToleranceRun;
  readonly ways: readonly Trim[];
}

function asJson({ file, names, station, run, ways }: Done): unknown {
  const { samples, heard, understood, covers, dial, loudness } = run.result();
  const influences = (of: Tolerance['dial']['influences']) => ({
    explained: of?.explained ?? null,
    of: leading(run.scatters, of, run.scatters.length).map(({ scatter, share, slope }) => ({ key: scatter.key, share, slope })),
  });
  return {
    file,
    station: names[station],
    samples,
    heard,
    understood,
    covers,
    dial: { frequency: dial.frequency, place: dial.place, ...influences(dial.influences) },
    loudness: { headroom: loudness.headroom, ...influences(loudness.influences) },
    trims: ways,
    scatters: run.scatters.map(({ key, label, extent }) => ({ key, label, extent })),
  };
}

function pictureOf({ loaded, names, station, rotation, run }: Done): string {
  const meant = run.bench.build([], []);
  const builds: Builds = {
    built: run.built.map((b) => handBuilt(meant, b)),
    meant: handBuilt(meant, meant),
    spread: dialSpread(meant, run.built),
    headroom: run.result().loudness.headroom,
    rotation,
  };
  return drawDots(dotsOfBuilds(builds, 'dial'), { title: `${loaded.name}: ${names[station]}, built over and over on paper` });
}

function asText({ loaded, names, station, place, rotation, run, ways }: Done): string {
  const result = run.result();
  const spread = dialSpread(run.bench.build([], []), run.built);
  const lines = toleranceLines(result, spread, { station: names[station]!, rotation, reached: run.bench.reached.length });
  const { dial, loudness } = result;
  return [
    [
      bold(`${loaded.name}: ${names[station]} at ${place}`),
      `of ${result.samples} sets built on paper`,
      ...lines.map(({ label, text }) => wrap(`${label.padEnd(LABELS)} ${text}`, WIDTH, ' '.repeat(LABELS + 1))),
      dim(wrap(GIVE_OR_TAKE, WIDTH)),
    ].join('\n'),
    influenceText('what moves the dial most', influenceWords(run.scatters, dial.influences, ways, 'dial')),
    influenceText('what changes the loudness most', influenceWords(run.scatters, loudness.influences, ways, 'loudness')),
    table(
      [
        { head: 'to trim it', align: 'left' },
        { head: 'dial moves', align: 'right' },
        { head: 'louder by', align: 'right' },
      ],
      trimRows(ways).map((w) => [w.words, w.moves, w.louder]),
    ),
    dim(wrap(`${NOT_SCATTERED} earshot tolerance FILE --json lists every scatter.`, WIDTH)),
  ].join('\n\n');
}

function influenceText(head: string, { rows, trust, beyond }: InfluenceWords): string {
  if (rows.length === 0) return dim(`${head}: ${trust}`);
  const each = rows.flatMap((r, k) => [
    wrap(`${k + 1}. ${r.label}: ${r.share}; a usual error does ${r.deviation}`, WIDTH, '   '),
    dim(`   ${wrap(`spread ${r.extent}`, WIDTH - 3, '   ')}`),
    ...r.mends.map((m) => `   ${wrap(`- ${m}`, WIDTH - 3, '     ')}`),
  ]);
  return [bold(head), ...each, dim(wrap(`${trust} ${beyond}`.trim(), WIDTH))].join('\n');
}
