import { drawSchematic } from '#draw';
import type { Block } from '../flow/block.ts';
import { scaledDrawing } from '../flow/drawing.ts';
import { heading } from '../flow/words.ts';
import type { Context } from './context.ts';

export function circuit({ findings, type, width, paper }: Context): readonly Block[] {
  const { set } = findings.meant;
  const svg = drawSchematic(set, {
    title: 'What is joined to what',
    inductance: findings.reception.receiver.tank.inductance,
    theme: 'light',
  });
  return [...heading('Circuit', width, type), ...scaledDrawing(svg, paper, type)];
}
