import { aerialTitle } from '#draw';
import {
  type AerialDescription,
  type AerialModel,
  type Figure,
  type Place,
  patternFigures,
  patternSummary,
  type ReceivedField,
  resonanceFigures,
  resonances,
  shareFigures,
  type WireAerial,
  type WiresDescription,
  wireParts,
  wireShares,
} from '#engine';
import { formatFigure } from '#units';
import type { Group } from '../group.ts';
import { type AerialView, aerialView, arrivalOf } from './aerial-view.ts';
import { alongBoom, toCut } from './cutting.ts';

/**
 * The aerial toward each station; one made of wires also over the band, in pattern and to cut.
 *
 * @param chosen - stations of the place, by index
 */
export function aerialGroups(place: Place, aerial: AerialDescription, chosen: readonly number[]): readonly Group[] {
  if (aerial.kind === 'coil') return [{ heading: 'the coil is the aerial', figures: [], remarks: [COIL_IS_AERIAL] }];
  return viewGroups(place, aerialView(place, aerial, chosen));
}

/** The same of an aerial that is looked at already. */
export function viewGroups(place: Place, { model, wires, range, chosen, at }: AerialView): readonly Group[] {
  if (!wires) return chosen.map((field) => stationGroup(model, field));
  const { description, bare } = wires;
  const parts = wireParts(description.shape);
  return [
    overview(description, bare, place, at, range),
    overBand(description, bare, at, range),
    toCut(description),
    ...alongBoom(description.shape),
    ...chosen.map((field) => ({ ...stationGroup(model, field), ...sharesOf(bare, parts, field) })),
  ];
}

const COIL_IS_AERIAL = "Its figures are the tank's; e.m.f. and available power stand in the ladder of each station.";

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
