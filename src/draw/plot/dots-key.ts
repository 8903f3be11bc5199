import { type Vector, vector } from '../plane/vector.ts';
import type { Mark } from '../svg/mark.ts';
import { textBlock } from '../svg/text-block.ts';
import { textWidth } from '../svg/text-width.ts';
import { CLASSES, classOf, LOOK } from './dot-classes.ts';
import type { Dots } from './dots.ts';

const SIZE = 2.8;
const RADIUS = 1.1;
const LINE = 4.6;
/** From one entry to the next [mm]. */
const APART = 5;

/** Shapes with what they mean and how many there are, then what the bands are. */
export function dotsKey({ dots, meant, spread }: Dots, width: number): { readonly marks: readonly Mark[]; readonly height: number } {
  const entries: { readonly sign: (at: Vector) => Mark; readonly text: string }[] = CLASSES.flatMap((c) => {
    const count = dots.filter((d) => classOf(d) === c).length;
    if (count === 0) return [];
    const { shape, stroke, thickness, words } = LOOK[c];
    const sign = (at: Vector): Mark => ({
      kind: 'specks',
      shape,
      points: [at],
      radius: RADIUS,
      stroke,
      width: thickness * RADIUS,
      cap: 'round',
      labels: { sign: c },
    });
    return [{ sign, text: `${words}: ${count}` }];
  });
  if (meant.x !== null)
    entries.push({ sign: (centre) => ({ kind: 'circle', centre, radius: 1.5, stroke: 'accent', width: 0.6 }), text: 'the set as meant' });
  const marks: Mark[] = [];
  let left = 0;
  let top = 0;
  for (const { sign, text } of entries) {
    const needed = 2 * RADIUS + 1.6 + textWidth(text, SIZE) + APART;
    if (left > 0 && left + needed - APART > width) {
      left = 0;
      top += LINE;
    }
    marks.push(sign(vector(left + RADIUS + 0.4, top + LINE / 2)), {
      kind: 'text',
      at: vector(left + 2 * RADIUS + 1.6, top + LINE / 2 + 0.36 * SIZE),
      text,
      size: SIZE,
      anchor: 'start',
      angle: 0,
      fill: 'ink',
      labels: { key: 'class' },
    });
    left += needed;
  }
  const height = entries.length > 0 ? top + LINE : 0;
  if (!spread.x && !spread.headroom) return { marks, height };
  const words = textBlock(
    [
      {
        text: 'Grey: where 80 of 100 lie, 10 beyond it on either side. Dashed: half lie to each side.',
        size: SIZE,
        fill: 'quiet',
        kind: 'key',
      },
    ],
    width,
  );
  const below = words.marks.map((m): Mark => (m.kind === 'text' ? { ...m, at: vector(m.at.x, m.at.y + height) } : m));
  return { marks: [...marks, ...below], height: height + words.height };
}
