import { aerialTitle, type Component, drawCurve, drawDescribedAerial, drawPattern } from '#draw';
import { azimuthCut, elevationCut, type PatternPoint, patternSummary, resonances, type WireAerial } from '#engine';
import type { AerialView } from '#tell';
import { formatFigure } from '#units';
import { writeText } from './write-text.ts';

/** Files to be written. */
export interface DrawingOptions {
  readonly draw?: string;
  readonly pattern?: string;
  readonly impedance?: string;
}

/** Writes the drawings that were asked for. */
export function writeDrawings(name: string, view: AerialView, { draw, pattern, impedance }: DrawingOptions): void {
  const { wires } = view;
  if (draw !== undefined && wires) {
    const title = `${aerialTitle(wires.description.shape)}: ${name}`;
    writeText(draw, drawDescribedAerial(wires.description, { title }));
  }
  if (pattern !== undefined && wires) {
    const [level, upright] = patterns(name, view, wires.bare);
    writeText(pattern, level);
    writeText(beside(pattern, '-upright'), upright);
  }
  if (impedance !== undefined) writeText(impedance, impedancePlot(name, view));
}

/** `beam.svg` and `-upright` make `beam-upright.svg`. */
const beside = (file: string, ending: string): string => (/\.svg$/i.test(file) ? file.replace(/(\.svg)$/i, `${ending}$1`) : file + ending);

/** One point a degree. */
const POINTS = 360;
/** A component that stays so far below the other is not drawn [dB]. */
const FAINT = 30;

/** Round the compass through the strongest direction's elevation (level where the aerial is in the open), and upright through its bearing. */
function patterns(title: string, { at, fields }: AerialView, bare: WireAerial): readonly [string, string] {
  const { frequency } = at.station;
  const { discretised, solution } = bare.solved(frequency);
  const { azimuth, elevation: strongest } = patternSummary(discretised, solution).strongest.arrival;
  const open = discretised.structure.ground.kind === 'free-space';
  const elevation = open ? 0 : strongest;
  const level = azimuthCut(discretised, solution, elevation, POINTS);
  const upright = elevationCut(discretised, solution, azimuth, open ? POINTS : POINTS / 2 + 1);
  const options = (points: readonly PatternPoint[]) => ({
    title: `${title}, ${formatFigure(frequency, 'Hz')}`,
    components: componentsOf(points),
    note: 'Wires alone: set, hands and house are left out.',
  });
  return [
    drawPattern(
      { kind: 'azimuth', elevation, points: level },
      { ...options(level), stations: fields.map((f) => ({ label: f.station.name, bearing: f.bearing })) },
    ),
    drawPattern({ kind: 'elevation', azimuth, points: upright }, options(upright)),
  ];
}

function componentsOf(points: readonly PatternPoint[]): readonly Component[] {
  const most = (key: Component) => Math.max(...points.map((p) => p.gain[key] ?? Number.NEGATIVE_INFINITY));
  const [h, v] = [most('horizontal'), most('vertical')];
  return Math.abs(h - v) > FAINT ? ['total'] : ['total', 'horizontal', 'vertical'];
}

const CURVE_POINTS = 161;

function impedancePlot(title: string, { model: fed, wires, range, fields, at }: AerialView): string {
  const model = wires?.bare ?? fed;
  const arrival = { azimuth: at.bearing, elevation: at.elevation };
  const points = Array.from({ length: CURVE_POINTS }, (_, i) => {
    const x = range.from + ((range.to - range.from) * i) / (CURVE_POINTS - 1);
    return { x, z: model.at(x, arrival).impedance };
  });
  const found = resonances(model, range.from, range.to);
  return drawCurve(
    [
      { label: 'resistance', points: points.map(({ x, z }) => ({ x, y: z.re })) },
      { label: 'reactance', points: points.map(({ x, z }) => ({ x, y: z.im })) },
    ],
    {
      title: `Impedance: ${title}`,
      x: { label: 'frequency', unit: 'Hz', from: range.from, to: range.to },
      y: { label: 'impedance', unit: 'ohm' },
      marks: [
        ...fields.map((f) => ({ kind: 'x' as const, x: f.station.frequency, label: f.station.name })),
        ...found.map((r) => ({ kind: 'point' as const, x: r.frequency, y: 0, label: `resonance ${formatFigure(r.frequency, 'Hz')}` })),
      ],
      note: `Computed by: ${model.method}.`,
    },
  );
}
