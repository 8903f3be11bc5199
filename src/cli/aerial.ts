import { aerialTitle } from '#draw';
import {
  type AerialDescription,
  type AerialModel,
  aerialModel,
  C,
  type Figure,
  GivenError,
  type Place,
  patternFigures,
  patternSummary,
  type ReceivedField,
  receiveAll,
  resonanceFigures,
  resonances,
  shareFigures,
  type WireAerial,
  type WiresDescription,
  wireAerial,
  wireParts,
  wireShares,
  withFeeder,
} from '#engine';
import { formatFigure } from '#units';
import { type DrawingOptions, writeDrawings } from './aerial-drawings.ts';
import { BadFile } from './bad-file.ts';
import { alongBoom, toCut } from './cutting.ts';
import type { Group } from './group.ts';
import { checked, type Loaded, load } from './load.ts';
import { pickStations } from './pick.ts';
import { whole } from './whole.ts';

export interface AerialOptions extends DrawingOptions {
  readonly segments?: string;
}

/** `earshot aerial`: the aerial toward each station; one made of wires also over the band, in pattern and to cut. Writes the drawings asked for. */
export function aerialGroups(file: string, wanted: string | undefined, options: AerialOptions): readonly Group[] {
  const loaded = load(file);
  return checked(loaded, () => {
    try {
      return groups(loaded, wanted, options);
    } catch (e) {
      if (e instanceof GivenError && e.path === 'aerial.segments' && options.segments !== undefined)
        throw new BadFile(`--segments ${options.segments}: ${e.why}\n  ${e.mend}`);
      throw e;
    }
  });
}

function groups(loaded: Loaded, wanted: string | undefined, options: AerialOptions): readonly Group[] {
  const { place, set } = whole(loaded);
  const aerial = forced(set.aerial, options);
  if (aerial.kind === 'coil') return [{ heading: 'the coil is the aerial', figures: [], remarks: [COIL_IS_AERIAL] }];
  const fields = receiveAll(place);
  const chosen = pickStations(
    place.stations.map((s) => s.name),
    wanted,
  ).map((k) => fields[k]!);
  const range = bandOf(place);
  if (aerial.kind !== 'wires') {
    const model = aerialModel(aerial);
    writeDrawings({ title: loaded.name, model, wires: null, range, fields, at: chosen[0]! }, options);
    return chosen.map((field) => stationGroup(model, field));
  }
  const { feeder, ...description } = aerial;
  const bare = wireAerial(description);
  const model = feeder ? withFeeder(bare, feeder) : bare;
  const main = bestHeard(bare, chosen);
  writeDrawings({ title: loaded.name, model: bare, wires: { description, bare }, range, fields, at: main }, options);
  const parts = wireParts(description.shape);
  return [
    overview(description, bare, place, main, range),
    overBand(description, bare, main, range),
    toCut(description),
    ...alongBoom(description.shape),
    ...chosen.map((field) => ({ ...stationGroup(model, field), ...sharesOf(bare, parts, field) })),
  ];
}

const COIL_IS_AERIAL = "Its figures are the tank's: see `earshot tank`; e.m.f. and available power: `earshot hear`.";

/** The aerial with the number of segments that the command line asks for; refuses what only wires have of any other. */
function forced(aerial: AerialDescription, { segments, draw, pattern, impedance }: AerialOptions): AerialDescription {
  for (const [option, given] of Object.entries({ segments, draw, pattern, ...(aerial.kind === 'coil' && { impedance }) }))
    if (given !== undefined && aerial.kind !== 'wires')
      throw new BadFile(
        `--${option} ${given}: the aerial of this file is not described by its wires\n  Write "aerial": { "kind": "wires", "shape": ... }; \`earshot schema\` describes the shapes.`,
      );
  if (segments === undefined || aerial.kind !== 'wires') return aerial;
  return { ...aerial, segments: Number(segments) };
}

/** The FM band where all stations are in it, else what they cover and a little more [Hz]. */
function bandOf({ stations }: Place): { readonly from: number; readonly to: number } {
  const all = stations.map((s) => s.frequency);
  const [low, high] = [Math.min(...all), Math.max(...all)];
  return low >= 87.5e6 && high <= 108e6 ? { from: 87.5e6, to: 108e6 } : { from: 0.95 * low, to: 1.05 * high };
}

const arrivalOf = ({ bearing, elevation }: ReceivedField) => ({ azimuth: bearing, elevation });

function stationGroup(model: AerialModel, field: ReceivedField): Group {
  const { frequency, name } = field.station;
  return { heading: name, figures: model.figures(frequency, arrivalOf(field)), remarks: model.remarks(frequency) };
}

/** What each part contributes to a station. */
function sharesOf(bare: WireAerial, parts: readonly string[], field: ReceivedField): Pick<Group, 'rows' | 'rowNames'> {
  const { discretised, solution } = bare.solved(field.station.frequency);
  const shares = shareFigures(wireShares(discretised, solution, arrivalOf(field)), parts, field);
  return { rows: shares.map((s) => s.figures), rowNames: { head: 'what hears it', names: shares.map((s) => s.part) } };
}

/** How far beyond the band resonances are looked for: two more bands of the solver. */
const BEYOND = 1.25;
/** Figures of the terminals that belong to the aerial as a whole. */
const OWN = ['resistance', 'reactance', 'lossResistance', 'efficiency', 'segments', 'cuttingError', 'tuningBand', 'powerBalance'];

function overview(
  description: WiresDescription,
  bare: WireAerial,
  place: Place,
  field: ReceivedField,
  range: { readonly from: number; readonly to: number },
): Group {
  const { frequency, name } = field.station;
  const [from, to] = [range.from / BEYOND, range.to * BEYOND];
  const { discretised, solution } = bare.solved(frequency);
  const found = resonances(bare, from, to);
  const own = bare.figures(frequency, arrivalOf(field));
  return {
    heading: `${aerialTitle(description.shape)}, at ${formatFigure(frequency, 'Hz')} (${name})`,
    figures: [
      ...resonanceFigures(found, from, to),
      ...patternFigures(patternSummary(discretised, solution)),
      ...OWN.flatMap((key) => own.filter((f) => f.name === `aerial.${key}`)),
    ],
    remarks: [
      ...(found.length > 0 ? [] : [`no resonance between ${formatFigure(from, 'Hz', 3)} and ${formatFigure(to, 'Hz', 3)}`]),
      ...heightRemark(description, place),
    ],
  };
}

/** Field and impedance are computed for one and the same height only if the file says so. */
function heightRemark({ shape, height, ground }: WiresDescription, { site }: Place): readonly string[] {
  if (shape.kind === 'free-list' || ground.kind === 'free-space' || Math.abs(height - site.height) < 0.1 * site.height) return [];
  return [
    `the aerial stands ${formatFigure(height, 'm', 3)} above its ground, and the field is that ${formatFigure(site.height, 'm', 3)} up (place.site.height)`,
  ];
}

const BAND_ROWS = 11;
const BAND_COLUMNS = ['resistance', 'reactance', 'lossResistance', 'gain', 'frontToBack'];

/** The station that the aerial makes most of: the one it was put up for, as a rule. */
function bestHeard(bare: WireAerial, fields: readonly ReceivedField[]): ReceivedField {
  const emf = (f: ReceivedField): number => {
    const { horizontal, vertical } = bare.at(f.station.frequency, arrivalOf(f));
    return Math.hypot(C.abs(horizontal) * f.horizontal, C.abs(vertical) * f.vertical);
  };
  return fields.reduce((best, f) => (emf(f) > emf(best) ? f : best));
}

/** Impedance and gain over the band: of a beam forwards, of any other aerial where it is strongest at the station's frequency. */
function overBand(
  { shape }: WiresDescription,
  bare: WireAerial,
  field: ReceivedField,
  { from, to }: { readonly from: number; readonly to: number },
): Group {
  const { discretised, solution } = bare.solved(field.station.frequency);
  const arrival =
    shape.kind === 'beam' ? { azimuth: shape.bearing, elevation: 0 } : patternSummary(discretised, solution).strongest.arrival;
  const rows = Array.from({ length: BAND_ROWS }, (_, i) => {
    const frequency = from + ((to - from) * i) / (BAND_ROWS - 1);
    const figures = bare.figures(frequency, arrival);
    return [frequencyFigure(frequency), ...BAND_COLUMNS.map((key) => renamed(figures.find((f) => f.name === `aerial.${key}`)!))];
  });
  return { heading: 'over the band', figures: [], remarks: [], rows };
}

const frequencyFigure = (frequency: number): Figure => ({
  name: 'band.frequency',
  label: 'frequency',
  value: frequency,
  unit: 'Hz',
  method: 'chosen',
  working: { formula: 'equal steps', terms: [], source: 'the FM band, or what the stations cover' },
});

const LABELS: Readonly<Record<string, string>> = {
  'aerial.resistance': 'resistance',
  'aerial.reactance': 'reactance',
  'aerial.lossResistance': 'loss',
  'aerial.gain': 'gain',
  'aerial.frontToBack': 'front-to-back',
};
const renamed = (f: Figure): Figure => ({ ...f, name: f.name.replace('aerial.', 'band.'), label: LABELS[f.name]! });
