import { DIAMETER, drawCoil, drawJig, lengthText, tankWindings, type Wound, windingLength, windingSteps, wireToCut } from '#draw';
import type { Block } from '../flow/block.ts';
import { drawing } from '../flow/drawing.ts';
import { table } from '../flow/table.ts';
import { heading, list, paragraph, QUIET } from '../flow/words.ts';
import { BLEED, roomHeight, roomWidth, turned } from '../pdf/paper.ts';
import type { Context } from './context.ts';
import { DEGREE, farads, frequencyText, henries } from './say.ts';

/** For heading and margins round a drawing on a page [mm]. */
const HEADROOM = 30;

/** The coil: numbers, drawing, steps, and the strip to wind it by. */
export function coil(context: Context): readonly Block[] {
  const { findings, type, width } = context;
  const { tank, aerial } = findings.meant.set;
  const model = findings.reception.receiver.tank;
  const head = [
    ...heading('Coil', width, type, { newPage: true }),
    ...(aerial.kind === 'coil'
      ? paragraph(
          `The coil is the aerial too: ${aerial.axis.kind === 'vertical' ? 'it lies flat' : `it stands on edge, and its edge points to ${Math.round(aerial.axis.plane / DEGREE)}° (clockwise from north)`}. Keep metal and hands away from it.`,
          width,
          type,
          { withNext: true },
        )
      : []),
  ];
  const windings = tankWindings(tank);
  if (tank.coil.kind === 'electrical' || !windings)
    return [
      ...head,
      ...paragraph(
        `The coil is given by what it does, not by its shape: ${henries(model.inductance)}${tank.coil.kind === 'electrical' ? `, Q of ${tank.coil.q} at ${frequencyText(tank.coil.frequency)}, own capacitance ${farads(tank.coil.selfCapacitance)}, counted as ${tank.coil.turns} ${tank.coil.turns === 1 ? 'turn' : 'turns'}` : ''}. Take the one that was measured; there is nothing to wind.${tapText(context)}`,
        width,
        type,
      ),
    ];
  return [
    ...head,
    ...table(
      [
        { head: '', align: 'left' },
        { head: 'turns', align: 'right' },
        { head: 'inside', align: 'right' },
        { head: 'wire', align: 'right' },
        { head: 'pitch', align: 'right' },
        { head: 'length', align: 'right' },
        { head: 'each lead', align: 'right' },
        { head: 'to cut', align: 'right' },
      ],
      windings.map(windingRow),
      width,
      type,
    ),
    ...paragraph(
      `Inductance with its leads ${henries(model.inductance)}, own capacitance ${farads(model.selfCapacitance)}. Inside: across the former. Pitch: from the middle of the wire to that of the next turn. Length: between the middles of the wire at both ends.${formerText(context)}`,
      width,
      type,
      { size: 3, colour: QUIET },
    ),
    ...picture(context),
    ...list(windingSteps(tank)!, width, type, { numbered: true }),
    ...jig(context),
  ];
}

const windingRow = (w: Wound): readonly string[] => [
  w.name,
  `${Number(w.turns.toFixed(3))}`,
  lengthText(w.innerDiameter),
  `${DIAMETER} ${lengthText(w.wireDiameter)}`,
  w.turns > 1 ? lengthText(w.pitch) : '-',
  w.turns > 1 ? lengthText(windingLength(w)) : '-',
  w.leadLength === null ? 'as needed' : lengthText(w.leadLength),
  lengthText(wireToCut(w)),
];

function formerText({ findings }: Context): string {
  const { coil: c } = findings.meant.set.tank;
  if (c.kind !== 'geometry') return '';
  const surface = c.surfaceFactor > 1 ? ` Its surface is reckoned ${c.surfaceFactor} times as lossy as bright metal.` : '';
  return c.former
    ? `${surface} The former stays in: permittivity ${c.former.permittivity}, loss tangent ${c.former.lossTangent}.`
    : `${surface} The former comes out.`;
}

/** Taps of a coil that is not drawn. */
function tapText({ findings }: Context): string {
  const { aerialCoupling, detectorCoupling } = findings.meant.set.tank;
  return [
    ['aerial', aerialCoupling],
    ['detector', detectorCoupling],
  ]
    .map(([who, c]) => (typeof c === 'object' && c.kind === 'tap' ? ` Tap for the ${who as string}: ${c.turns} from the cold end.` : ''))
    .join('');
}

/** The coil at the largest scale that fits; its sheet is as wide as it must be, so that several heights are tried. */
function picture({ findings, paper, type, width }: Context): readonly Block[] {
  for (const viewHeight of [95, 80, 140])
    for (const room of [roomWidth(paper), roomWidth(turned(paper))]) {
      const svg = drawCoil(findings.meant.set.tank, { width: room + 2 * BLEED, viewHeight, steps: false, theme: 'light' });
      const block = svg && drawing(svg, paper);
      if (block) return [block];
    }
  return paragraph(
    'The coil is too large to be drawn on this paper at a scale that rules are made for; its numbers above are all there is to it.',
    width,
    type,
  );
}

function jig({ findings, paper, type, width }: Context): readonly Block[] {
  const { tank } = findings.meant.set;
  const heights = { upright: roomHeight(paper) - HEADROOM, turned: roomHeight(turned(paper)) - HEADROOM };
  const upright = drawJig(tank, { width: roomWidth(paper) + 2 * BLEED, height: heights.upright, theme: 'light' });
  const wide = drawJig(tank, { width: roomWidth(turned(paper)) + 2 * BLEED, height: heights.turned, theme: 'light' });
  const chosen = upright && 'pieces' in upright && upright.pieces.length === 1 ? upright : wide && 'pieces' in wide ? wide : upright;
  if (!chosen) return [];
  if ('none' in chosen) return paragraph(chosen.none, width, type);
  return chosen.pieces.flatMap((svg) => drawing(svg, paper) ?? []);
}
