import { DIAMETER, describedCuts, drawAnyAerial, lengthText } from '#draw';
import type { AerialDescription, WiresDescription } from '#engine';
import { alongBoom, cautionsWhere, setWords } from '#tell';
import { formatFigure } from '#units';
import type { Block } from '../flow/block.ts';
import { drawing, scaledDrawing } from '../flow/drawing.ts';
import { table } from '../flow/table.ts';
import { heading, list, paragraph, QUIET, subheading, WARNING } from '../flow/words.ts';
import { BLEED, roomHeight } from '../pdf/paper.ts';
import type { Context } from './context.ts';
import { frequencyText, ohms } from './say.ts';

/** For headings and lists round an aerial's views on one page [mm]. */
const AROUND = 110;
/** Room for the views of an aerial by formula, which has few lengths [mm]. */
const FORMULA_HEIGHT = 110;

/** What to cut and how to put it up; cautions where the risk is. */
export function aerial(context: Context): readonly Block[] {
  const { findings, type, width } = context;
  const { set } = findings.meant;
  const a = set.aerial;
  const warnings = cautionsWhere(set, findings.reports).filter((c) => c.at !== 'phones');
  const [words] = setWords(set);
  return [
    ...heading('Aerial', width, type, { afterDrawings: true }),
    ...paragraph(`${words!.charAt(0).toUpperCase()}${words!.slice(1)}.`, width, type),
    ...list(
      warnings.map((c) => c.words),
      width,
      type,
      { colour: WARNING },
    ),
    ...(a.kind === 'wires' ? wires(a, context) : closedForm(a, context)),
    ...feeder(a, context),
    ...picture(a, context),
  ];
}

/** The aerial to scale; at its own size if that finds room, as a frame's does. */
function picture(a: AerialDescription, { type, width, paper }: Context): readonly Block[] {
  const viewHeight = a.kind === 'wires' ? roomHeight(paper) - AROUND : FORMULA_HEIGHT;
  const svg = drawAnyAerial(a, { width: width + 2 * BLEED, theme: 'light', viewHeight });
  if (!svg) return [];
  const block = drawing(svg, paper);
  return block ? [block] : scaledDrawing(svg, paper, type);
}

function wires(a: WiresDescription, { type, width }: Context): readonly Block[] {
  const cuts = describedCuts(a);
  const [boom] = alongBoom(a.shape);
  return [
    ...subheading('To cut, without what joints need', width, type),
    ...table(
      [
        { head: 'pieces', align: 'right' },
        { head: 'length of each', align: 'right' },
        { head: 'diameter', align: 'right' },
        { head: 'metal and shape', align: 'left' },
      ],
      cuts.map((c) => [
        `${c.count}`,
        lengthText(c.length),
        `${DIAMETER} ${lengthText(c.diameter)}`,
        [c.metal, c.shape].filter((t) => t !== '').join(', '),
      ]),
      width,
      type,
    ),
    ...(boom?.rows
      ? [
          ...subheading('Along the boom', width, type),
          ...table(
            [
              { head: 'element', align: 'left' },
              { head: 'length', align: 'right' },
              { head: 'from the rearmost', align: 'right' },
            ],
            boom.rows.map((row, i) => [boom.rowNames!.names[i]!, ...row.map((f) => lengthText(f.value ?? 0))]),
            width,
            type,
          ),
        ]
      : []),
  ];
}

function closedForm(a: Exclude<AerialDescription, WiresDescription>, { type, width }: Context): readonly Block[] {
  const rows = cutRows(a);
  return [
    ...(rows.length === 0
      ? []
      : table(
          [
            { head: 'piece', align: 'left' },
            { head: 'length', align: 'right' },
            { head: 'diameter', align: 'right' },
            { head: 'metal', align: 'left' },
          ],
          rows,
          width,
          type,
        )),
    ...notes(a).flatMap((t) => paragraph(t, width, type)),
  ];
}

type Row = readonly [piece: string, length: string, diameter: string, metal: string];

function cutRows(a: Exclude<AerialDescription, WiresDescription>): readonly Row[] {
  const row = (piece: string, length: number, diameter: number, metal = ''): Row => [
    piece,
    lengthText(length),
    `${DIAMETER} ${lengthText(diameter)}`,
    metal,
  ];
  switch (a.kind) {
    case 'dipole':
      return [
        row('two halves, each, less half the gap', a.length / 2, a.diameter, a.metal),
        row('tip to tip, gap included', a.length, a.diameter, a.metal),
      ];
    case 'whip': {
      const c = a.counterpoise;
      return [
        row('rod', a.length, a.diameter, a.metal),
        ...(c.kind === 'drop-wire' ? [row('drop wire, hanging from the set', c.length, c.diameter, 'copper')] : []),
        ...(c.kind === 'earth-wire' ? [row('wire to the earth rod', c.length, c.diameter, 'copper')] : []),
      ];
    }
    case 'wire-to-earth':
      return [
        row('level part', a.horizontal, a.diameter, 'copper'),
        row('rising part', a.vertical, a.diameter, 'copper'),
        row('all in one piece', a.horizontal + a.vertical, a.diameter, 'copper'),
      ];
    case 'loop':
    case 'electrical':
    case 'coil':
      return [];
  }
}

function notes(a: Exclude<AerialDescription, WiresDescription>): readonly string[] {
  const bearing = (angle: number): string => `${Math.round((angle * 180) / Math.PI)}°`;
  switch (a.kind) {
    case 'dipole':
      return a.orientation.kind === 'horizontal'
        ? [`Level, broadside to the bearing ${bearing(a.orientation.broadside)} (clockwise from north).`]
        : ['Upright.'];
    case 'whip': {
      const c = a.counterpoise;
      if (c.kind === 'earth-wire') return [`Earth reckoned with ${ohms(c.earthResistance)}.`];
      if (c.kind === 'set') return [`The set itself is the other half: ${lengthText(c.size)} at its largest.`];
      return c.kind === 'plane' ? ['The rod stands on a plane of metal.'] : [];
    }
    case 'loop':
      return [
        `${a.turns} ${a.turns === 1 ? 'turn' : 'turns'}, ${lengthText(a.diameter)} to the middle of the wire, ${a.axis.kind === 'vertical' ? 'lying flat' : `upright, its plane along the bearing ${bearing(a.axis.plane)}`}.`,
      ];
    case 'wire-to-earth':
      return [`Earth reckoned with ${ohms(a.earthResistance)}.`];
    case 'electrical':
      return [
        `An aerial given by what it does, not by its shape: ${a.impedance.map((z) => `${ohms(z.resistance)} and ${z.reactance.toPrecision(3)} Ω of reactance at ${frequencyText(z.frequency)}`).join('; ')}${a.gain === undefined ? '' : `; gain ${formatFigure(a.gain, 'dB', 3)} over isotropic`}${a.effectiveLength === undefined ? '' : `; effective length ${lengthText(a.effectiveLength)}`}.`,
      ];
    case 'coil':
      return [];
  }
}

/** Aerials whose feed point may well be far from the builder's hands. */
const FED_ALOFT: readonly AerialDescription['kind'][] = ['wires', 'dipole', 'loop'];

function feeder({ kind, feeder: f }: AerialDescription, { type, width }: Context): readonly Block[] {
  if (!f && FED_ALOFT.includes(kind))
    return paragraph(
      'No line between aerial and set is reckoned: the set is right at the feed point, up where the aerial is.',
      width,
      type,
    );
  if (!f) return [];
  return paragraph(
    `Feeder: ${lengthText(f.length)} of ${ohms(f.impedance)} line, velocity factor ${f.velocityFactor}, loss ${formatFigure(f.loss, 'dB/m', 3)} at ${frequencyText(f.lossFrequency)}.`,
    width,
    type,
    { colour: QUIET },
  );
}
