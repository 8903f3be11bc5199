import { placeLabel } from '../placing/label.ts';
import { Occupied, WEIGHT } from '../placing/occupied.ts';
import { plotSize } from '../plane/checked-size.ts';
import { type Extent, extentOf } from '../plane/extent.ts';
import { type Vector, vector } from '../plane/vector.ts';
import { type Mark, outline, textBox } from '../svg/mark.ts';
import { textWidth, wrapText } from '../svg/text-width.ts';
import { axis } from './axis.ts';
import { clipCurve } from './curve-pieces.ts';
import { frameMarks, TICK_SIZE } from './frame-marks.ts';
import { fixedText, valueText } from './number-text.ts';
import { MARGIN, type PlotOptions, plotSheet, WIDTH } from './plot-sheet.ts';
import { checkProfile, type ProfileFacts, type ProfilePath, profileFacts } from './profile-facts.ts';

export interface ProfileOptions extends PlotOptions {
  /** names of both ends; "mast" and "here" where left out */
  readonly mast?: string;
  readonly site?: string;
  /** of the frame [mm] */
  readonly height?: number;
}

const HEIGHT = 60;
const EACH_X = 18;
const EACH_Y = 11;
const NAME = 2.8;
const NAME_ROW = 4;
/** Points at which the Fresnel zone is drawn: dense at both ends, where it is round. */
const ZONE_STEPS = 48;
/** Less than this costs nothing. Source: ITU-R P.526-15 eq. 31. */
const CLEAR = -0.78;

/** The ground between mast and listener with the straight path and its first Fresnel zone, as SVG text. Heights are drawn larger than lengths. */
export function drawProfile(path: ProfilePath, options: ProfileOptions): string {
  checkProfile(path);
  const facts = profileFacts(path);
  const { distance, height: ground } = path.profile;
  const width = plotSize('options.width', options.width ?? WIDTH, 80);
  const height = plotSize('options.height', options.height ?? HEIGHT, 20);
  const zone = Array.from({ length: ZONE_STEPS + 1 }, (_, i) => (facts.length * (1 - Math.cos((Math.PI * i) / ZONE_STEPS))) / 2);
  const heights = [...ground, ...zone.flatMap((d) => [facts.ray(d) + facts.zone(d)])];
  const y = axis({ label: 'height', unit: 'm' }, heights, height / EACH_Y, true, 'path.profile.height');
  const gutter = 6 + 2 + Math.max(...y.ticks.map((t) => textWidth(t.text, TICK_SIZE))) + 1.5;
  const inner = width - 2 * MARGIN - gutter - 3;
  const x = axis(
    { label: 'distance from the mast', unit: 'm' },
    [0, facts.length],
    Math.max(2, inner / EACH_X),
    false,
    'path.profile.distance',
  );
  const frame: Extent = { left: gutter, right: gutter + inner, top: 0, bottom: height };
  const at = (d: number, h: number): Vector => vector(frame.left + x.place(d)! * inner, frame.bottom - y.place(h)! * height);
  // what lies lower than the axis begins is cut off at it
  const within = (p: Vector): Vector => vector(p.x, Math.min(p.y, frame.bottom));

  const surface = distance.map((d, i) => at(d, ground[i]!));
  const upper = zone.map((d) => at(d, facts.ray(d) + facts.zone(d)));
  const lower = zone.map((d) => within(at(d, facts.ray(d) - facts.zone(d))));
  const [mastFoot, mastTop] = [surface[0]!, at(0, facts.ray(0))];
  const [siteFoot, siteTop] = [surface.at(-1)!, at(facts.length, facts.ray(facts.length))];
  const edges = (points: readonly Vector[]): readonly Mark[] =>
    clipCurve(points, frame).map(
      (piece): Mark => ({ kind: 'polyline', points: piece, stroke: 'series-1', width: 0.25, dash: [1.6, 1.2], labels: { zone: 'edge' } }),
    );
  const post = (from: Vector, to: Vector, end: string): Mark => ({
    kind: 'line',
    from,
    to,
    stroke: 'ink',
    width: 0.8,
    labels: { post: end },
  });
  const body: Mark[] = [
    ...frameMarks(x, y, frame),
    { kind: 'area', points: [...upper, ...[...lower].reverse()], fill: 'series-1', opacity: 0.14, labels: { zone: 'area' } },
    {
      kind: 'area',
      points: [vector(frame.left, frame.bottom), ...surface, vector(frame.right, frame.bottom)],
      fill: 'faint',
      labels: { ground: 'area' },
    },
    { kind: 'polyline', points: surface, stroke: 'ink', width: 0.45, labels: { ground: 'surface' } },
    ...edges(upper),
    ...edges(zone.map((d) => at(d, facts.ray(d) - facts.zone(d)))),
    { kind: 'line', from: mastTop, to: siteTop, stroke: 'series-1', width: 0.5, labels: { ray: 'line' } },
    post(mastFoot, mastTop, 'mast'),
    post(siteFoot, siteTop, 'site'),
  ];
  const names = nameMarks(
    [`${options.mast ?? 'mast'}, ${metres(path.mastHeight)} up`, `${options.site ?? 'here'}, ${metres(path.siteHeight)} up`],
    frame,
  );
  body.push(...names);
  body.push(...worstMarks(facts, at, body));

  const taken = extentOf(body.flatMap(outline))!;
  const left = Math.min(0, taken.left);
  const sheetWidth = Math.max(width, taken.right - left + 2 * MARGIN);
  return plotSheet(options, {
    width: sheetWidth,
    description: `Ground over ${valueText(facts.length, 'm')}, mast ${metres(path.mastHeight)}, listener ${metres(path.siteHeight)} above it, at ${valueText(path.frequency, 'Hz')}. ${worstWords(facts)}`,
    plot: { marks: body, left: -left, top: taken.top, bottom: taken.bottom },
    foot: [
      { text: worstWords(facts), size: 3, fill: 'ink', kind: 'facts' },
      {
        text: 'The ground with the bulge of the earth put on, so that the path is straight; broken lines: first Fresnel zone.',
        size: 2.8,
        fill: 'quiet',
        kind: 'key',
      },
    ],
    aboveFoot: 3,
  });
}

/** Over the frame: the mast's name on the left, the site's on the right, neither further than the middle. */
function nameMarks(names: readonly [string, string], f: Extent): readonly Mark[] {
  const most = (f.right - f.left) / 2 - 3;
  const lines = names.map((n) => wrapText(n, NAME, most));
  return lines.flatMap((list, k) =>
    list.map(
      (text, i): Mark => ({
        kind: 'text',
        at: vector(k === 0 ? f.left : f.right, f.top - 2 - (list.length - 1 - i) * NAME_ROW),
        text,
        size: NAME,
        anchor: k === 0 ? 'start' : 'end',
        angle: 0,
        fill: 'ink',
        labels: { end: k === 0 ? 'mast' : 'site' },
      }),
    ),
  );
}

function worstMarks({ worst, ray }: ProfileFacts, at: (d: number, h: number) => Vector, drawn: readonly Mark[]): readonly Mark[] {
  if (!worst) return [];
  const occupied = new Occupied();
  for (const m of drawn) {
    if (m.kind === 'text') occupied.addText(textBox(m));
    else if (m.kind === 'line' && m.stroke !== 'faint') occupied.addLine(m.from, m.to, WEIGHT.conductor);
    else if (m.kind === 'polyline')
      m.points.slice(1).forEach((p, i) => {
        occupied.addLine(m.points[i]!, p, WEIGHT.faint);
      });
  }
  const point = at(worst.distance, worst.height);
  const text = `${metres(Math.abs(worst.over))} ${worst.over > 0 ? 'above' : 'below'} the path`;
  return [
    { kind: 'line', from: point, to: at(worst.distance, ray(worst.distance)), stroke: 'accent', width: 0.3 },
    { kind: 'circle', centre: point, radius: 1, fill: 'paper', stroke: 'accent', width: 0.4, labels: { worst: 'point' } },
    ...placeLabel(point, text, { size: NAME, fill: 'accent', clear: 1.3, labels: { worst: 'name' } }, occupied),
  ];
}

function worstWords({ worst, zone }: ProfileFacts): string {
  if (!worst) return 'No height is known between the two.';
  const where = `${valueText(worst.distance, 'm')} from the mast`;
  const zones = fixedText(Math.abs(worst.over) / zone(worst.distance), 1);
  const off = metres(Math.abs(worst.over));
  if (worst.over > 0)
    return `The ground stands ${off} into the path ${where}, ${zones} times the radius of the first Fresnel zone: nu ${fixedText(worst.nu, 1)}.`;
  const cost = worst.nu > CLEAR ? 'it takes something away' : 'it takes nothing away';
  return `The ground comes nearest ${where}, ${off} below the path or ${zones} of the radius of the first Fresnel zone: ${cost}.`;
}

/** A height: to a tenth, never in another unit. */
const metres = (height: number): string => `${Number(height.toFixed(1))} m`;
