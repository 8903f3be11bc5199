import type { StationReport } from '#engine';
import { ladderRows, verdictSentence } from '#tell';
import { formatFigure } from '#units';
import type { Findings } from '../findings.ts';
import type { Block } from '../flow/block.ts';
import { table } from '../flow/table.ts';
import { heading, paragraph, QUIET } from '../flow/words.ts';
import type { Context } from './context.ts';
import { DEGREE, degrees, frequencyText } from './say.ts';

/** What becomes of a station, in a word or two. */
export const OUTCOME = {
  clear: 'heard clearly',
  understandable: 'mostly understood',
  faint: 'only just heard',
  silent: 'not heard',
  'out-of-reach': 'out of reach of the dial',
} as const;

/** What this is, how to print it, and whether it is worth building. */
export function front({ findings, type, width, changed }: Context): readonly Block[] {
  const { file, place, report, advice } = findings;
  return [
    ...paragraph(file.name === '' ? 'A set' : file.name, width, type, { size: 8, face: 'bold', above: 0 }),
    ...paragraph(
      `Build sheet for ${place.name}, for the station ${report.station}, ${frequencyText(report.signal.received.station.frequency)}. A radio without a battery.`,
      width,
      type,
      { size: 4, colour: QUIET, above: 0.8 },
    ),
    ...(file.notes === '' ? [] : paragraph(file.notes, width, type, { above: 3 })),
    ...paragraph(
      'Print at 100 % (actual size), never "fit to page". Then lay a rule on the two rulers at the edges of each page: 100 mm must be 100 mm both ways. If not, nothing to be cut out or wound from this sheet is right.',
      width,
      type,
      { face: 'bold', above: 3.5 },
    ),
    ...heading('Is it worth building here?', width, type),
    ...paragraph(verdictSentence(report, advice[0]), width, type),
    ...table(
      [
        { head: 'from the mast to the ear', align: 'left' },
        { head: 'level', align: 'right' },
        { head: 'lost on the way', align: 'right' },
      ],
      ladderRows(report).map((r) => [r.label, r.value, r.cost]),
      width,
      type,
    ),
    ...report.remarks.flatMap((r) => paragraph(r, width, type, { size: 3, colour: QUIET, sign: '–', indent: 4 })),
    ...(changed.length === 0
      ? []
      : paragraph(
          `The print has no type for some letters of the file. Written in others here (Latin letters, or the letters' Unicode numbers after U+): ${changed.join('; ')}. The file keeps them as they are.`,
          width,
          type,
          { size: 3, colour: QUIET, above: 3 },
        )),
  ];
}

/** Every station through the set: where on the dial, how loud, how well. */
export function stationTable({ findings, type, width }: Context): readonly Block[] {
  return table(
    [
      { head: 'station', align: 'left' },
      { head: 'carrier', align: 'right' },
      { head: 'loudest at', align: 'right' },
      { head: 'again at', align: 'right' },
      { head: 'per degree', align: 'right' },
      { head: 'speech', align: 'right' },
      { head: 'and then', align: 'left' },
    ],
    findings.reports.map((r) => {
      const points = 'missing' in r.dial ? [] : r.dial.points;
      return [
        r.station,
        frequencyText(r.signal.received.station.frequency),
        points[0] ? degrees(points[0].angle) : '-',
        points[1] ? degrees(points[1].angle) : '-',
        slopeText(findings, r),
        r.verdict.level === null ? '-' : formatFigure(r.verdict.level, 'dB SPL', 3),
        OUTCOME[r.verdict.outcome],
      ];
    }),
    width,
    type,
  );
}

/** How fast the dial runs at a station [Hz per degree]. */
function slopeText({ dial }: Findings, { dial: best }: StationReport): string {
  if ('missing' in best) return '-';
  const { angle } = best.resonance;
  const i = dial.points.findIndex((p) => p.angle > angle);
  const [a, b] = [dial.points[i - 1], dial.points[i]];
  if (!a || !b || a.frequency === null || b.frequency === null) return '-';
  return formatFigure(Math.abs(b.frequency - a.frequency) / ((b.angle - a.angle) / DEGREE), 'Hz', 2);
}
