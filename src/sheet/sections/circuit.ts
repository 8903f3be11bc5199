import { drawSchematic, drawWiring } from '#draw';
import type { Block } from '../flow/block.ts';
import { scaledDrawing } from '../flow/drawing.ts';
import { heading, paragraph } from '../flow/words.ts';
import type { Context } from './context.ts';

/** The circuit by symbols, and as it lies on the bench. */
export function circuit({ findings, type, width, paper }: Context): readonly Block[] {
  const { set } = findings.meant;
  const options = { inductance: findings.reception.receiver.tank.inductance, theme: 'light' } as const;
  return [
    ...heading('Circuit', width, type),
    ...paragraph(
      'Drawn twice: by symbols, and as the parts may lie on the bench. Both have the same wires. On the bench the parts lie so that the wires with radio frequency are short, that of the tuned circuit above all. The drawings are here or at the head of the next page.',
      width,
      type,
    ),
    ...scaledDrawing(drawSchematic(set, { ...options, title: 'What is joined to what' }), paper, type),
    ...scaledDrawing(drawWiring(set, { ...options, title: 'How it may lie on the bench' }), paper, type),
  ];
}
