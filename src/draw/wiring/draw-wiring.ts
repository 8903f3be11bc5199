import type { SetDescription } from '#engine';
import { circuitWords } from '../circuit/circuit-words.ts';
import type { SchematicOptions } from '../circuit/draw-schematic.ts';
import { netlistOf } from '../circuit/netlist.ts';
import { extentOf } from '../plane/extent.ts';
import { vector } from '../plane/vector.ts';
import { svgDocument } from '../svg/document.ts';
import { type Mark, outline } from '../svg/mark.ts';
import { textBlock } from '../svg/text-block.ts';
import { benchMarks } from './bench-layout.ts';
import { benchParts } from './bench-parts.ts';
import { fewerTurns } from './coil.ts';
import { type Lead, LOOKS } from './lead.ts';

const MARGIN = 5;
const NARROWEST = 110;
const KEY_ROW = 4.6;
const KEY_LINE = 9;

const KEY: readonly (readonly [Lead, string])[] = [
  ['tank', 'round the tuned circuit: as short, straight and thick as can be'],
  ['detector', 'radio frequency to the detector and from the aerial: short'],
  ['audio', 'speech and direct current: any length will do'],
];

/**
 * The set as it may lie on the bench, as SVG text: every part as a thing, placed so that the wires, those with radio frequency above all, are
 * short (the best that a search finds), and joined as the engine's network joins it. Not to scale, as large as it must be.
 */
export function drawWiring(set: SetDescription, options: SchematicOptions = {}): string {
  const marks = benchMarks(benchParts(set, netlistOf(set, options)));
  const extent = extentOf(marks.flatMap(outline))!;
  const width = Math.max(NARROWEST, extent.right - extent.left + 2 * MARGIN);
  const title = options.title ?? 'Wiring';
  const head = textBlock([{ text: title, size: 4.4, fill: 'ink', kind: 'title' }], width - 2 * MARGIN);
  const key = KEY.flatMap(([lead, text], i): readonly Mark[] => {
    const y = (i + 0.5) * KEY_ROW;
    return [
      { kind: 'line', from: vector(0, y), to: vector(KEY_LINE, y), ...LOOKS[lead], labels: { key: lead } },
      { kind: 'text', at: vector(KEY_LINE + 2, y + 1), text, size: 2.8, anchor: 'start', angle: 0, fill: 'ink', labels: { text: 'key' } },
    ];
  });
  const words = [
    'Not to scale. Where wires cross without a dot they do not touch.',
    ...(fewerTurns(set.tank.coil) ? ['Fewer turns are drawn than the coil has.'] : []),
    ...(options.note === undefined ? [] : [options.note]),
  ];
  const foot = textBlock(
    words.map((text) => ({ text, size: 2.8, fill: 'quiet', kind: 'note' })),
    width - 2 * MARGIN,
  );
  const top = MARGIN + head.height + 3;
  const keyTop = top + extent.bottom - extent.top + 3;
  const footTop = keyTop + KEY.length * KEY_ROW + 1;
  return svgDocument({
    width,
    height: footTop + foot.height + MARGIN,
    title,
    description: `${circuitWords(set, options)} Drawn as it may lie on the bench, so that the wires with radio frequency are short, those of the tuned circuit above all.`,
    groups: [
      { marks: head.marks, shift: vector(MARGIN, MARGIN) },
      { marks, shift: vector(MARGIN - extent.left, top - extent.top), labels: { part: 'wiring' } },
      { marks: key, shift: vector(MARGIN, keyTop) },
      { marks: foot.marks, shift: vector(MARGIN, footTop) },
    ],
    theme: options.theme ?? 'auto',
    id: options.id,
  });
}
