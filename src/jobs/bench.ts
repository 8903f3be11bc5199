import {
  type AerialDescription,
  assemble,
  type BestDial,
  bestDial,
  type DialPoint,
  dialTable,
  GivenError,
  type OutOfReach,
  type Place,
  type Reception,
  reportAt,
  reportStation,
  type StationReport,
  standAt,
} from '#engine';
import type { Improvement, Shelf, Situation } from '#find';
import type { Problem, SetFile, Source, UsedPart } from '#set-file';
import { givenProblem } from '#tell';
import type { Answer, Document } from './document.ts';

/** Places on the dial that a picture of it is drawn through. */
const DIAL_POINTS = 61;

/** A document on the bench: read, and with what has been worked out of it so far, since the next question is most often about the same one. */
export class Bench {
  readonly file: SetFile;
  readonly parts: readonly UsedPart[];
  readonly #place: Place;
  readonly #shelf: Shelf | null;
  readonly #dials = new Map<number, BestDial | OutOfReach>();
  readonly #reports = new Map<number, StationReport>();
  #reception: Reception | null = null;
  #dialTable: readonly DialPoint[] | null = null;
  /** what would help a station, once it has been searched for */
  readonly advice = new Map<number, readonly Improvement[]>();

  /** @param shelf - parts that changes may swap in; null to read them when they are asked for */
  constructor(file: SetFile, place: Place, parts: readonly UsedPart[], shelf: Shelf | null) {
    this.file = file;
    this.#place = place;
    this.parts = parts;
    this.#shelf = shelf;
  }

  get situation(): Situation {
    const { aerial, tank, detector, phones, ear, programme } = this.file;
    return { place: this.#place, set: { aerial: sameAerial(aerial), tank, detector, phones }, listener: { ear, programme } };
  }

  get reception(): Reception {
    if (!this.#reception) {
      const { place, set, listener } = this.situation;
      this.#reception = standAt(place, assemble(set, listener));
    }
    return this.#reception;
  }

  /** The dial of the tank alone, which nothing but the tank changes. */
  get dialTable(): readonly DialPoint[] {
    this.#dialTable ??= dialTable(this.reception.receiver.tank, DIAL_POINTS);
    return this.#dialTable;
  }

  /** Parts that changes may swap in. */
  async shelf(): Promise<Shelf> {
    return this.#shelf ?? (await reading()).shelfWith(this.file.drawer);
  }

  /** Where the dial is best for a station. */
  dial(station: number): BestDial | OutOfReach {
    return kept(this.#dials, station, () => this.#reports.get(station)?.dial ?? bestDial(this.reception, station));
  }

  /** A station where the dial is best for it, or where it was left [rad]. */
  report(station: number, angle?: number): StationReport {
    if (angle === undefined) return kept(this.#reports, station, () => reportStation(this.reception, station));
    return reportAt(this.reception, station, this.dial(station), angle);
  }

  /** Stations asked for, by index: one, or all. */
  stations(station: number | undefined): readonly number[] {
    const all = this.#place.stations.map((_, k) => k);
    if (station === undefined) return all;
    if (!all.includes(station)) throw new RangeError(`there is no station ${station}: they are numbered from 0 to ${all.length - 1}`);
    return [station];
  }
}

const reading = () => import('./reading.ts');

/** A document on its bench, and where things stand in it. */
type Laid = Answer<Bench> & { readonly source?: Source };

/** Documents that stay on the bench: the one worked on, and those it is compared with. */
const KEPT = 4;
const benches = new Map<string, Promise<Laid>>();

/**
 * Works on a document; what it says that cannot be comes back as problems with their lines, from reading or from the engine.
 */
export async function onBench<T>(document: Document, work: (bench: Bench) => T | Promise<T>): Promise<Answer<T>> {
  return worked(document, await benchOf(document), work);
}

/** The same of a document that is looked at once, and takes no other's place on the bench. */
export async function offBench<T>(document: Document, work: (bench: Bench) => T | Promise<T>): Promise<Answer<T>> {
  return worked(document, await laid(document), work);
}

async function worked<T>(document: Document, bench: Laid, work: (bench: Bench) => T | Promise<T>): Promise<Answer<T>> {
  if (!bench.ok) return bench;
  try {
    return { ok: true, value: await work(bench.value) };
  } catch (e) {
    if (!(e instanceof GivenError)) throw e;
    const source = bench.source ?? (await sourceOf(document));
    if (!source) throw e;
    return { ok: false, problems: [givenProblem(e, source)] };
  }
}

function benchOf(document: Document): Promise<Laid> {
  const key = JSON.stringify([document.text, Object.entries(document.files ?? {}).sort(([a], [b]) => (a < b ? -1 : 1))]);
  const known = benches.get(key);
  // the one used last goes to the end, and the first is the one to go
  if (known) benches.delete(key);
  const bench = known ?? laid(document);
  benches.set(key, bench);
  // what failed for no fault of the document's is tried anew
  bench.catch(() => benches.delete(key));
  for (const old of benches.keys()) {
    if (benches.size <= KEPT) break;
    benches.delete(old);
  }
  return bench;
}

async function laid(document: Document): Promise<Laid> {
  const { ahead } = document;
  if (ahead?.file.place) return { ok: true, value: new Bench(ahead.file, ahead.file.place, ahead.parts, ahead.shelf) };
  const result = (await reading()).read(document);
  if (!result.ok) return result;
  const { value, parts, source } = result;
  if (!value.place) return { ok: false, problems: [noPlace(source)] };
  return { ok: true, value: new Bench(value, value.place, parts, null), source };
}

async function sourceOf(document: Document): Promise<Source | null> {
  const result = (await reading()).read(document);
  return result.ok ? result.source : null;
}

const noPlace = (source: Source): Problem => ({
  path: 'place',
  ...source.locate('place'),
  given: 'left out',
  why: 'from mast to ear a place with its stations is needed',
  mend: 'Add one, or refer to a file that has it: "place": {"file": "town.json"}.',
});

/** An aerial that reads the same is the same: the engine keeps what it has solved by the description itself, and wires cost most of all. */
const aerials = new Map<string, AerialDescription>();
const AERIALS_KEPT = 8;
function sameAerial(description: AerialDescription): AerialDescription {
  const key = JSON.stringify(description);
  const known = aerials.get(key) ?? description;
  aerials.delete(key);
  aerials.set(key, known);
  const oldest = aerials.keys().next();
  if (aerials.size > AERIALS_KEPT && !oldest.done) aerials.delete(oldest.value);
  return known;
}

function kept<K, V>(known: Map<K, V>, key: K, make: () => V): V {
  const found = known.get(key);
  if (found !== undefined) return found;
  const made = make();
  known.set(key, made);
  return made;
}
