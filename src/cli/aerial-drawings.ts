import { aerialTitle, drawCurve, drawDescribedAerial, drawPattern, strongComponents } from '#draw';
import type { PatternPoint, WireAerial } from '#engine';
import { type AerialView, aerialBand, aerialPattern } from '#tell';
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

/** Round the compass through the strongest direction's elevation (level where the aerial is in the open), and upright through its bearing. */
function patterns(title: string, view: AerialView, bare: WireAerial): readonly [string, string] {
  const { elevation, level, azimuth, upright } = aerialPattern(view, bare);
  const options = (points: readonly PatternPoint[]) => ({
    title: `${title}, ${formatFigure(view.at.station.frequency, 'Hz')}`,
    components: strongComponents(points),
    note: 'Wires alone: set, hands and house are left out.',
  });
  return [
    drawPattern(
      { kind: 'azimuth', elevation, points: level },
      { ...options(level), stations: view.fields.map((f) => ({ label: f.station.name, bearing: f.bearing })) },
    ),
    drawPattern({ kind: 'elevation', azimuth, points: upright }, options(upright)),
  ];
}

function impedancePlot(title: string, view: AerialView): string {
  const { points, resonances } = aerialBand(view);
  const { range, fields } = view;
  return drawCurve(
    [
      { label: 'resistance', points: points.map(({ frequency, impedance }) => ({ x: frequency, y: impedance.re })) },
      { label: 'reactance', points: points.map(({ frequency, impedance }) => ({ x: frequency, y: impedance.im })) },
    ],
    {
      title: `Impedance: ${title}`,
      x: { label: 'frequency', unit: 'Hz', from: range.from, to: range.to },
      y: { label: 'impedance', unit: 'ohm' },
      marks: [
        ...fields.map((f) => ({ kind: 'x' as const, x: f.station.frequency, label: f.station.name })),
        ...resonances.map((r) => ({ kind: 'point' as const, x: r.frequency, y: 0, label: `resonance ${formatFigure(r.frequency, 'Hz')}` })),
      ],
      note: `Computed by: ${(view.wires?.bare ?? view.model).method}.`,
    },
  );
}
