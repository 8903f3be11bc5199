import {
  aerialModel,
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
import { rangeText, valueText } from '#tell';
import { formatFigure } from '#units';
import { bold, dim } from './colour.ts';
import { figuresJson, printJson } from './figures-json.ts';
import { checked, type Loaded, load, loadPlace } from './load.ts';
import { pickStations, workings } from './pick.ts';
import { table, wrap } from './table.ts';
import { type Whole, whole } from './whole.ts';

/** Figures under one heading: a station's, or the part's own. */
interface Group {
  readonly heading: string;
  readonly figures: readonly Figure[];
  readonly remarks: readonly string[];
  /** figures in rows, such as the places of a dial */
  readonly rows?: readonly (readonly Figure[])[];
}

interface Stage {
  readonly name: string;
  readonly description: string;
  readonly groups: (file: string, station: string | undefined) => readonly Group[];
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
    description: 'impedance, effective length and losses toward each station',
    groups: (file, wanted) =>
      ofWhole(file, ({ place, set: { aerial } }) => {
        if (aerial.kind === 'coil') return [{ heading: 'the coil is the aerial', figures: [], remarks: [COIL_IS_AERIAL] }];
        const model = aerialModel(aerial);
        const fields = receiveAll(place);
        return stationsOf(place, wanted).map((k) => {
          const { station, bearing, elevation } = fields[k]!;
          return {
            heading: station.name,
            figures: model.figures(station.frequency, { azimuth: bearing, elevation }),
            remarks: model.remarks(station.frequency),
          };
        });
      }),
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

const COIL_IS_AERIAL = "Its figures are the tank's: see `earshot tank`; e.m.f. and available power: `earshot hear`.";

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

export function stageCommand(stage: Stage, file: string, options: { station?: string; json?: boolean; working?: string }): void {
  const groups = stage.groups(file, options.station);
  if (options.working !== undefined) {
    console.log(
      workings(
        groups.map((g) => ({ heading: g.heading, figures: [...g.figures, ...(g.rows?.[0] ?? [])] })),
        options.working,
      ),
    );
    return;
  }
  if (options.json) {
    printJson({
      file,
      stage: stage.name,
      groups: groups.map((g) => ({
        name: g.heading,
        figures: figuresJson(g.figures),
        ...(g.rows ? { rows: g.rows.map(figuresJson) } : {}),
        remarks: g.remarks,
      })),
    });
    return;
  }
  console.log(groups.map(groupText).join('\n\n'));
}

function groupText(g: Group): string {
  const lines = [bold(g.heading)];
  if (g.figures.length > 0)
    lines.push(
      table(
        [
          { head: 'figure', align: 'left' },
          { head: 'value', align: 'right' },
          { head: 'likely', align: 'left' },
          { head: 'name', align: 'left' },
        ],
        g.figures.map((f) => [f.label, valueText(f), rangeText(f), dim(f.name)]),
      ),
    );
  if (g.rows?.[0])
    lines.push(
      table(
        g.rows[0].map((f) => ({ head: f.label, align: 'right' as const })),
        g.rows.map((row) => row.map(valueText)),
      ),
    );
  return [...lines, ...g.remarks.map((r) => wrap(`- ${r}`, 96, '  '))].join('\n');
}
