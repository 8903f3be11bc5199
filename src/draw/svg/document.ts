import { GivenError } from '#engine';
import type { Vector } from '../plane/vector.ts';
import { element } from './element.ts';
import { escapeXml } from './escape.ts';
import { type Mark, render } from './mark.ts';
import { drawingStyles, ROOT_CLASS, shade, type Theme } from './palette.ts';

/** Marks that belong together, moved as one. */
export interface Group {
  readonly marks: readonly Mark[];
  readonly shift: Vector;
  readonly labels?: Readonly<Record<string, string | number>>;
}

export interface Sheet {
  /** [mm] */
  readonly width: number;
  readonly height: number;
  /** read out in place of the picture */
  readonly title: string;
  readonly description: string;
  readonly groups: readonly Group[];
  readonly theme: Theme;
  /** of the title's and the description's elements, where a page holds several drawings; made from the content where left out */
  readonly id: string | undefined;
}

/** The whole file: a picture with a name and a description for those who do not see it, sized in millimetres of paper. */
export function svgDocument(sheet: Sheet): string {
  const { theme } = sheet;
  const body = sheet.groups.map((g) =>
    element(
      'g',
      Object.fromEntries(Object.entries(g.labels ?? {}).map(([k, v]) => [`data-${k}`, `${v}`])),
      g.marks.map((m) => render(m, g.shift, theme)),
    ),
  );
  const id = sheet.id ?? `drawing-${fingerprint(sheet.title + sheet.description + body.join(''))}`;
  if (!/^[A-Za-z][\w-]*$/.test(id))
    throw new GivenError('options.id', JSON.stringify(id), 'it names an element', 'Give a letter, then letters, figures, - or _.');
  const paper = element('rect', { width: sheet.width, height: sheet.height, class: 'f-paper', fill: shade('paper', theme) });
  return `${element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      width: `${sheet.width}mm`,
      height: `${Number(sheet.height.toFixed(3))}mm`,
      viewBox: `0 0 ${sheet.width} ${Number(sheet.height.toFixed(3))}`,
      role: 'img',
      'aria-labelledby': `${id}-title ${id}-desc`,
      class: ROOT_CLASS,
      'font-family': 'system-ui, sans-serif',
    },
    [
      element('title', { id: `${id}-title` }, [escapeXml(sheet.title)]),
      element('desc', { id: `${id}-desc` }, [escapeXml(sheet.description)]),
      ...(theme === 'auto' ? [element('style', {}, [drawingStyles()])] : []),
      paper,
      ...body,
      '',
    ].map((part) => `\n${part}`),
  )}\n`;
}

/** Short name for a text: FNV-1a, 32 bit. */
function fingerprint(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return (hash >>> 0).toString(16).padStart(8, '0');
}
