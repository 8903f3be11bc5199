import { type DialOptions, drawDial, drawDialStrip } from '#draw';
import type { Block } from '../flow/block.ts';
import { drawing } from '../flow/drawing.ts';
import { table } from '../flow/table.ts';
import { heading, paragraph } from '../flow/words.ts';
import { roomWidth, turned } from '../pdf/paper.ts';
import type { Context } from './context.ts';
import { stationTable } from './front.ts';
import { DEGREE, degrees, tunedText } from './say.ts';

/** Radii to try on an upright page and then on a turned one, the first that finds room [mm]: the larger, the finer it can be set. */
const UPRIGHT = [60, 55, 50, 45];
const TURNED = [60, 50, 40, 30];
/** Lines of the table of the dial [degrees]. */
const STEP = 10;
const COLUMNS = 3;
const MOST_ROWS = 15;

/** From where degrees count, and which way the printed scale runs. */
function senseText({ findings }: Context): string {
  const known = findings.dial.points.flatMap(({ frequency }) => (frequency === null ? [] : [frequency]));
  const out = known.length < 2 || known[0]! > known.at(-1)!;
  return `Degrees count from the ${out ? 'least capacitance, plates fully out' : 'greatest capacitance, plates fully in'}. The scale is for plates that open as the knob turns clockwise, so that the set tunes higher that way.`;
}

/** The scale to put behind the knob, and where on it the stations are. */
export function dial(context: Context): readonly Block[] {
  const { findings, type, width, paper } = context;
  const fm = findings.reports.some((r) => r.signal.received.station.modulation.kind === 'fm');
  return [
    ...heading('Dial', width, type, { newPage: true }),
    ...paragraph(
      `${senseText(context)}${fm ? ' A station with frequency modulation is heard twice, on either side of its carrier, with next to nothing between: that is how this detector hears it.' : ''} Check the station you know best before you glue the scale down: if it sits elsewhere, trim first.`,
      width,
      type,
    ),
    ...stationTable(context),
    ...scale(context),
    ...table(
      Array.from({ length: COLUMNS }, () => [
        { head: 'degrees', align: 'right' as const },
        { head: 'set tunes to', align: 'right' as const },
      ]).flat(),
      rows(context),
      width,
      type,
    ),
  ];

  /** Side by side, each column downwards. */
  function rows({ findings: f }: Context): readonly (readonly string[])[] {
    const { points, rotation } = f.dial;
    const step = Math.max(1, Math.ceil(rotation / DEGREE / STEP / MOST_ROWS / COLUMNS)) * STEP;
    const cells = Array.from({ length: Math.floor(rotation / DEGREE / step + 1e-9) + 1 }, (_, k) => {
      const angle = k * step * DEGREE;
      const { frequency } = points.reduce((a, b) => (Math.abs(b.angle - angle) < Math.abs(a.angle - angle) ? b : a));
      return [degrees(angle), frequency === null ? '-' : tunedText(frequency)];
    });
    const high = Math.ceil(cells.length / COLUMNS);
    return Array.from({ length: high }, (_, i) => Array.from({ length: COLUMNS }, (_, c) => cells[c * high + i] ?? ['', '']).flat());
  }

  function scale({ findings: f }: Context): readonly Block[] {
    const options: DialOptions = { title: 'Scale to cut out', theme: 'light' };
    const tries = [
      ...UPRIGHT.map((radius) => ({ radius, room: roomWidth(paper) })),
      ...TURNED.map((radius) => ({ radius, room: roomWidth(turned(paper)) })),
    ];
    for (const { radius, room } of tries) {
      const svg = drawDial(f.dial, { ...options, radius });
      const block = svg && drawing(svg, paper);
      if (block && block.width <= room) return [block];
    }
    const strip = drawing(drawDialStrip(f.dial, { title: 'Scale, laid out straight', width: roomWidth(paper), theme: 'light' }), paper);
    return strip ? [strip] : paragraph('The scale finds no room on this paper: the table below has it in numbers.', width, type);
  }
}
