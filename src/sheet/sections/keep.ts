import type { Block } from '../flow/block.ts';
import { heading, INK, paragraph, QUIET } from '../flow/words.ts';
import type { Context } from './context.ts';

/** Characters in a group and groups in a line: a group is what the eye carries over. */
const GROUP = 5;
const GROUPS = 12;
const SIZE = 3.4;
const LINE = 5;

/** What reopens the set. */
export function keep({ code, findings, type, width }: Context): readonly Block[] {
  const head = heading('To open this set again', width, type);
  if (code === null)
    return [
      ...head,
      ...paragraph('Keep its file: this set, with all it refers to, is too long to be typed or read off paper.', width, type),
    ];
  const groups = code.match(new RegExp(`.{1,${GROUP}}`, 'g')) ?? [];
  const lines = Array.from({ length: Math.ceil(groups.length / GROUPS) }, (_, i) => groups.slice(i * GROUPS, (i + 1) * GROUPS).join(' '));
  return [
    ...head,
    ...paragraph(
      `Best keep its file. Without it: put the code that follows behind the address of the app, after a #. Spaces and line breaks count for nothing; small and capital letters do. Copied out of this file on a screen, or scanned from paper, it need not be typed. It came across whole if the app shows the same verdict as the first page.`,
      width,
      type,
    ).map((b): Block => ({ ...b, keptWithNext: true })),
    ...lines.map(
      (line, i): Block => ({
        width,
        height: LINE,
        above: i === 0 ? 3 : 0,
        // on one page, so that it can be copied at one go
        ...(i < lines.length - 1 ? { withNext: true } : {}),
        paint(pen, x, y) {
          pen.text(line, { x, y: y + 0.7 * LINE }, { size: SIZE, colour: INK, face: 'fixed' });
        },
      }),
    ),
    ...paragraph(`${code.length} characters; in them is the place too: ${findings.place.name}. Who has the sheet has both.`, width, type, {
      size: 3,
      colour: QUIET,
    }),
  ];
}
