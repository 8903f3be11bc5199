import type { DialScale } from '#draw';
import {
  assemble,
  type DialPoint,
  dialTable,
  type Place,
  type Reception,
  reportStation,
  type StationReport,
  standAt,
  tunedTo,
} from '#engine';
import { glance, type Improvement, improvements, type Meant, type Trim, trims } from '#find';
import { LIBRARY, mergeParts, type Parts } from '#parts';
import { type SetFile, shelfOf, type UsedPart } from '#set-file';
import { type Substitute, substitutes } from './substitutes.ts';

/** All that is worked out for a sheet. */
export interface Findings {
  readonly file: SetFile;
  readonly place: Place;
  readonly parts: readonly UsedPart[];
  readonly meant: Meant;
  readonly reception: Reception;
  /** of every station of the place, in its order */
  readonly reports: readonly StationReport[];
  /** of the station the sheet is for */
  readonly report: StationReport;
  /** the whole set: what the dial tunes to, and where the stations are */
  readonly dial: DialScale;
  /** the tank alone, with nothing joined to it, at both ends and in the middle of the dial */
  readonly alone: readonly DialPoint[];
  readonly advice: readonly Improvement[];
  readonly trims: readonly Trim[];
  readonly substitutes: readonly Substitute[];
}

/** A point every two degrees or nearer, between which a scale is as good as straight. */
const STEP = Math.PI / 90;

/** @param station - index; the one heard best where left out */
export function findingsOf(file: SetFile & { readonly place: Place }, used: readonly UsedPart[], station: number | undefined): Findings {
  const { place, aerial, tank, detector, phones, ear, programme } = file;
  const now = { place, set: { aerial, tank, detector, phones }, listener: { ear, programme } };
  const reception = standAt(place, assemble(now.set, now.listener));
  const { receiver, signals } = reception;
  const index = station ?? signals.map((_, k) => glance(reception, k)).reduce((a, b) => (b.headroom > a.headroom ? b : a)).station;
  const reports = signals.map((_, k) => reportStation(reception, k));
  const report = reports[index];
  if (!report) throw new RangeError(`There is no station ${index}: they are numbered from 0 to ${reports.length - 1}.`);
  const { rotation } = receiver.tank;
  const steps = Math.ceil(rotation / STEP);
  const { arrival } = signals[index]!;
  const parts: Parts = mergeParts(file.drawer, LIBRARY);
  const shelf = shelfOf(parts);
  return {
    file,
    place,
    parts: used,
    meant: { ...now, station: index },
    reception,
    reports,
    report,
    dial: {
      rotation,
      points: Array.from({ length: steps + 1 }, (_, i) => {
        const angle = (rotation * i) / steps;
        return { angle, frequency: tunedTo(receiver, arrival, angle) };
      }),
      stations: reports.map(({ station: label, signal, dial }) => ({
        label,
        frequency: signal.received.station.frequency,
        points: 'missing' in dial ? [] : dial.points.map(({ angle }) => ({ angle })),
      })),
    },
    alone: dialTable(receiver.tank, 3),
    advice: improvements(now, index, shelf),
    trims: trims({ ...now, station: index }),
    substitutes: substitutes(now, index, shelf, parts, used),
  };
}
