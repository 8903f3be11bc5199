import { add, scale, vector } from '../plane/vector.ts';
import type { Mark } from '../svg/mark.ts';
import { drawEndLabels, type EndLabel, endLines } from './end-labels.ts';
import { fixedText } from './number-text.ts';
import { bearingWords, gainTowards, type PatternCut } from './pattern-facts.ts';
import { type Disc, towards } from './pattern-grid.ts';

/** A station to be marked on the rim. */
export interface StationMark {
  readonly label: string;
  /** [rad] */
  readonly bearing: number;
}

/** Room round the outermost ring for the bearings [mm]. */
export const RIM = 15;
/** Names are broken into lines no longer than this [mm]. */
const LONGEST_NAME = 30;

/** Name, bearing, and the gain that way. */
export function stationLines(cut: PatternCut, s: StationMark): readonly string[] {
  const gain = gainTowards(cut, s.bearing);
  return [...endLines(s.label, LONGEST_NAME), `${bearingWords(s.bearing)}, ${gain === null ? 'nothing' : `${fixedText(gain, 1)} dBi`}`];
}

/** Stations round the rim: a tick outside the ring, a line to their name on the nearer side. */
export function stationLabels(stations: readonly StationMark[], names: readonly (readonly string[])[], { radius }: Disc): readonly Mark[] {
  const ticks: Mark[] = [];
  const [right, left]: [EndLabel[], EndLabel[]] = [[], []];
  stations.forEach((s, i) => {
    const out = towards('bearing', s.bearing);
    const aside = scale(vector(-out.y, out.x), 1.1);
    const tip = scale(out, radius + 0.4);
    const foot = scale(out, radius + 3);
    ticks.push({ kind: 'area', points: [tip, add(foot, aside), add(foot, scale(aside, -1))], fill: 'ink', labels: { station: i } });
    const from = scale(out, radius + 9);
    ticks.push({ kind: 'line', from: foot, to: from, stroke: 'quiet', width: 0.15 });
    const label: EndLabel = { lines: names[i]!, sample: null, from, fill: 'ink', labels: { station: i } };
    (out.x >= 0 ? right : left).push(label);
  });
  const edge = radius + RIM - 5;
  return [
    ...ticks,
    ...drawEndLabels(right, edge, -radius - RIM, radius + RIM, 1),
    ...drawEndLabels(left, -edge, -radius - RIM, radius + RIM, -1),
  ];
}
