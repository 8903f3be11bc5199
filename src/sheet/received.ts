import type { DialScale } from '#draw';
import { assemble, type Place, type Reception, reportStation, type StationReport, standAt, tunedTo } from '#engine';
import { glance, type Meant } from '#find';
import type { SetFile } from '#set-file';

/** A set at its place, the station it is for, and its dial. */
export interface Received {
  readonly meant: Meant;
  readonly reception: Reception;
  /** of every station of the place, in its order */
  readonly reports: readonly StationReport[];
  /** of the station it is for */
  readonly report: StationReport;
  /** the whole set: what the dial tunes to, and where the stations are */
  readonly dial: DialScale;
}

/** A point at every whole second degree, so that a table of degrees finds its own, and one at the end; between them a scale is as good as straight. */
const STEP = Math.PI / 90;

/** @param station - index; the one heard best where left out */
export function receivedBy(file: SetFile & { readonly place: Place }, station: number | undefined): Received {
  const { place, aerial, tank, detector, phones, ear, programme } = file;
  const now = { place, set: { aerial, tank, detector, phones }, listener: { ear, programme } };
  const reception = standAt(place, assemble(now.set, now.listener));
  const { receiver, signals } = reception;
  const index = station ?? signals.map((_, k) => glance(reception, k)).reduce((a, b) => (b.headroom > a.headroom ? b : a)).station;
  const reports = signals.map((_, k) => reportStation(reception, k));
  const report = reports[index];
  if (!report) throw new RangeError(`There is no station ${index}: they are numbered from 0 to ${reports.length - 1}.`);
  const { rotation } = receiver.tank;
  const angles = [...Array.from({ length: Math.ceil(rotation / STEP - 1e-6) }, (_, i) => i * STEP), rotation];
  const { arrival } = signals[index]!;
  return {
    meant: { ...now, station: index },
    reception,
    reports,
    report,
    dial: {
      rotation,
      points: angles.map((angle) => ({ angle, frequency: tunedTo(receiver, arrival, angle) })),
      stations: reports.map(({ station: label, signal, dial }) => ({
        label,
        frequency: signal.received.station.frequency,
        points: 'missing' in dial ? [] : dial.points.map(({ angle }) => ({ angle })),
      })),
    },
  };
}
