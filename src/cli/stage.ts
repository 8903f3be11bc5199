import {
  assemble,
  chainFigures,
  detectorModel,
  dialTable,
  type Figure,
  type Place,
  phonesModel,
  receiveAll,
  reportStation,
  standAt,
  type TankModel,
} from '#engine';
import { formatFigure } from '#units';
import type { AerialOptions } from './aerial.ts';
import { type Group, printGroups } from './group.ts';
import { checked, type Loaded, load, loadPlace } from './load.ts';
import { pickStations } from './pick.ts';
import { type Whole, whole } from './whole.ts';

export interface StageOptions extends AerialOptions {
  readonly station?: string;
  readonly json?: boolean;
  readonly working?: string;
}

interface Stage {
  readonly name: string;
  readonly description: string;
  /** options of its own: as they are written, and what they do */
  readonly options?: readonly (readonly [flags: string, what: string])[];
  readonly groups: (file: string, station: string | undefined, options: StageOptions) => readonly Group[] | Promise<readonly Group[]>;
}

/** One command for each stage, in the order of the path. */
export const STAGES: readonly Stage[] = [
  {
    name: 'place',
    description: 'field strength of each station where the aerial stands, with its spread, noise and exposure',
    groups: (file, wanted) => {
      const loaded = loadPlace(file);
      const fields = checked(loaded, () => receiveAll(loaded.place));
      return stationsOf(loaded.place, wanted).map((k) => ({
        heading: fields[k]!.station.name,
        figures: fields[k]!.figures(),
        remarks: fields[k]!.remarks,
      }));
    },
  },
  {
    name: 'aerial',
    description: 'impedance, effective length and losses toward each station; of one made of wires also pattern, cutting list and drawings',
    options: [
      ['--segments <n>', 'forces the number of segments, for an aerial of wires'],
      ['--draw <svg>', 'writes a drawing to scale with the lengths to cut'],
      ['--pattern <svg>', 'writes the pattern round the compass, and beside it (-upright) the one over the top'],
      ['--impedance <svg>', 'writes resistance and reactance over the band'],
    ],
    groups: async (file, wanted, options) => (await import('./aerial.ts')).aerialGroups(file, wanted, options),
  },
  {
    name: 'tank',
    description: 'coil, capacitor, losses, dial and sharpness, at the best place on the dial for each station',
    groups: (file, wanted) =>
      ofWhole(file, ({ place, set, listener }) => {
        const reception = standAt(place, assemble(set, listener));
        const { tank } = reception.receiver;
        const stations = stationsOf(place, wanted).map((k) => {
          const report = reportStation(reception, k);
          const angle = report.heard?.at.angle ?? tank.rotation / 2;
          const own = chainFigures(report).filter((x) => x.name.startsWith('tank.') || x.name.startsWith('dial.'));
          return {
            heading: report.station,
            figures: [...tank.figures(place.stations[k]!.frequency, angle), ...own],
            remarks: tank.remarks,
          };
        });
        return [dialGroup(tank), ...stations];
      }),
  },
  {
    name: 'detector',
    description: 'what the detector is at rest, and how it turns radio into audio',
    groups: (file) => {
      const loaded = load(file);
      const model = checked(loaded, () => detectorModel(loaded.detector));
      return [{ heading: model.method, figures: model.figures(), remarks: [...model.remarks, ...partRemarks(loaded, 'detector')] }];
    },
  },
  {
    name: 'phones',
    description: 'audio network and earpiece',
    groups: (file) => {
      const loaded = load(file);
      const model = checked(loaded, () => phonesModel(loaded.phones));
      return [
        { heading: loaded.phones.earpiece.name, figures: model.figures(), remarks: [...model.remarks, ...partRemarks(loaded, 'phones')] },
      ];
    },
  },
  {
    name: 'ear',
    description: 'what is heard of each station: headroom by band, loudness, intelligibility',
    groups: (file, wanted) =>
      ofWhole(file, ({ place, set, listener }) => {
        const reception = standAt(place, assemble(set, listener));
        return stationsOf(place, wanted).map((k) => {
          const report = reportStation(reception, k);
          return {
            heading: report.station,
            figures: report.heard?.evaluation.hearing.figures() ?? chainFigures(report),
            remarks: report.heard ? [] : ['The dial does not reach this station.'],
          };
        });
      }),
  },
];

const stationsOf = (place: Place, wanted: string | undefined): readonly number[] =>
  pickStations(
    place.stations.map((s) => s.name),
    wanted,
  );

function ofWhole(file: string, work: (w: Whole) => readonly Group[]): readonly Group[] {
  const loaded = load(file);
  return checked(loaded, () => work(whole(loaded)));
}

/** Where the values of named parts are from, and how far they may be out. */
function partRemarks(loaded: Loaded, section: string): string[] {
  return loaded.parts
    .filter((p) => p.path.startsWith(section))
    .map((p) => {
      const bands = p.band.map((b) => `${b.key} ${formatFigure(b.low, b.unit || '1', 2)} to ${formatFigure(b.high, b.unit || '1', 2)}`);
      return `${p.title} (${p.name}). ${p.source}${bands.length > 0 ? ` Likely: ${bands.join(', ')}.` : ''}`;
    });
}

/** Places on the dial shown in the table. */
const DIAL_POINTS = 13;

/** The dial of the tank by itself: what it covers, and how fast the station runs past as the hand turns. */
function dialGroup(model: TankModel): Group {
  const working = { formula: 'Im Y(top) = 0', terms: [], source: 'admittance of the tank alone, nothing joined to it' };
  const figure = (name: string, label: string, value: number | null, unit: string): Figure => ({
    name: `dial.${name}`,
    label,
    value,
    unit,
    method: 'tank alone',
    working,
  });
  return {
    heading: 'the dial, tank alone',
    figures: [],
    remarks: [],
    rows: dialTable(model, DIAL_POINTS).map((p) => [
      figure('angle', 'angle', p.angle, 'rad'),
      figure('capacitance', 'capacitance', p.capacitance, 'F'),
      figure('frequency', 'resonance', p.frequency, 'Hz'),
      figure('slope', 'per degree', p.slope, 'Hz/rad'),
    ]),
  };
}

export async function stageCommand(stage: Stage, file: string, options: StageOptions): Promise<void> {
  printGroups(await stage.groups(file, options.station, options), options, { file, stage: stage.name });
}
