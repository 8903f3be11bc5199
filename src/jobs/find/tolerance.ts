import {
  type Built,
  bestStation,
  dialSpread,
  type HandBuilt,
  handBuilt,
  type Meant,
  type Tolerance,
  ToleranceRun,
  type Trim,
  trims,
} from '#find';
import type { JobContext } from '#rpc';
import {
  type Builds,
  type InfluenceWords,
  influenceWords,
  shareWords,
  type ToleranceLine,
  type TrimRow,
  toleranceLines,
  trimRows,
} from '#tell';
import { type Bench, onBench } from '../bench.ts';
import type { Answer, Document } from '../document.ts';

/** What a set that is built over and over is judged by. */
export interface TolerancePlan {
  /** index of the station, and its name */
  readonly station: number;
  readonly name: string;
  /** of the dial, from end to end [rad] */
  readonly rotation: number;
  /** the set without any error */
  readonly meant: HandBuilt;
  readonly trims: readonly TrimRow[];
}

export interface TolerancePlanGiven {
  readonly document: Document;
  /** index of the station; null for the one that is heard best */
  readonly station: number | null;
  /** the same seed makes the same errors */
  readonly seed: number;
}

/** Tries the trims and the set without any error. */
export function tolerancePlan({ document, station, seed }: TolerancePlanGiven): Promise<Answer<TolerancePlan>> {
  return onBench(document, (bench) => {
    const chosen = station ?? bestStation(bench.situation);
    bench.stations(chosen);
    const { meant, ways } = begunOf(bench, document, chosen, seed);
    return {
      station: chosen,
      name: bench.situation.place.stations[chosen]!.name,
      rotation: bench.situation.set.tank.capacitor.rotation,
      meant: handBuilt(meant, meant),
      trims: trimRows(ways),
    };
  });
}

export interface ToleranceSliceGiven {
  readonly document: Document;
  readonly station: number;
  readonly seed: number;
  /** sets that are known already, and how many are wanted in all */
  readonly from: number;
  readonly most: number;
  /** after which it hands over what it has [ms] */
  readonly milliseconds: number;
}

/** All that is known after some time, of all sets built so far; of the sets themselves only those that are new. */
export interface ToleranceSlice
  extends Pick<Tolerance, 'samples' | 'heard' | 'understood' | 'covers'>,
    Pick<Builds, 'spread' | 'headroom'> {
  readonly built: readonly HandBuilt[];
  readonly lines: readonly ToleranceLine[];
  readonly dial: InfluenceWords;
  readonly loudness: InfluenceWords;
  readonly scatters: readonly ScatterRow[];
}

/** Something that comes out differently each time, and what of the dial and of the loudness comes of it. */
export interface ScatterRow {
  readonly key: string;
  readonly label: string;
  readonly extent: string;
  /** null of too few sets */
  readonly dial: string | null;
  readonly loudness: string | null;
}

/** Sets built between two looks at the clock. */
const PORTION = 8;

/** Builds a set again and again for some time. A thread that was started anew builds what is known already once more. */
export function toleranceSlice(given: ToleranceSliceGiven, context: JobContext): Promise<Answer<ToleranceSlice>> {
  const { document, station, seed, from, most } = given;
  return onBench(document, async (bench) => {
    const until = Date.now() + given.milliseconds;
    const { run, meant, ways } = begunOf(bench, document, station, seed);
    while (run.built.length < most && (run.built.length <= from || Date.now() < until)) {
      run.step(Math.min(PORTION, most - run.built.length));
      await context.step();
    }
    const result = run.result();
    const { samples, heard, understood, covers, dial, loudness } = result;
    const spread = dialSpread(meant, run.built);
    const { place, set } = run.bench.meant;
    const facts = { station: place.stations[station]!.name, rotation: set.tank.capacitor.rotation, reached: run.bench.reached.length };
    const share = (shares: readonly number[] | undefined, k: number): string | null => (shares ? shareWords(shares[k]!) : null);
    return {
      samples,
      heard,
      understood,
      covers,
      spread,
      headroom: loudness.headroom,
      built: run.built.slice(from).map((b) => handBuilt(meant, b)),
      lines: toleranceLines(result, spread, facts),
      dial: influenceWords(run.scatters, dial.influences, ways, 'dial'),
      loudness: influenceWords(run.scatters, loudness.influences, ways, 'loudness'),
      scatters: run.scatters.map(({ key, label, extent }, k) => ({
        key,
        label,
        extent,
        dial: share(dial.influences?.shares, k),
        loudness: share(loudness.influences?.shares, k),
      })),
    };
  });
}

/** Runs that can be gone on with: the one at work, and the one before. */
const KEPT = 2;
const begun = new Map<string, Begun>();

/** A run with what belongs to it whatever comes of it. */
interface Begun {
  readonly run: ToleranceRun;
  /** the set without any error */
  readonly meant: Built;
  readonly ways: readonly Trim[];
}

function begunOf({ situation, parts }: Bench, { text, files }: Document, station: number, seed: number): Begun {
  const key = JSON.stringify([text, files, station, seed]);
  const known = begun.get(key) ?? begin({ ...situation, station }, parts, seed);
  begun.delete(key);
  begun.set(key, known);
  const oldest = begun.keys().next();
  if (begun.size > KEPT && !oldest.done) begun.delete(oldest.value);
  return known;
}

function begin(meant: Meant, parts: Bench['parts'], seed: number): Begun {
  const run = new ToleranceRun(meant, { parts, seed });
  return { run, meant: run.bench.build([], []), ways: trims(meant) };
}
