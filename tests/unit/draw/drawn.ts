import { readFileSync } from 'node:fs';
import { type Element, everyElement, parseXml, textOf } from './xml.ts';

/** A text as it stands in a drawing, with the room it takes. */
export interface DrawnText {
  readonly text: string;
  readonly element: Element;
  /** corners in order */
  readonly corners: readonly (readonly [number, number])[];
}

export interface Drawn {
  readonly root: Element;
  readonly elements: readonly Element[];
  readonly width: number;
  readonly height: number;
  readonly texts: readonly DrawnText[];
}

const FACES: readonly Readonly<Record<string, number>>[] = Object.values(
  JSON.parse(readFileSync(new URL('../../reference/draw/text-widths.json', import.meta.url), 'utf8')),
);
/** All characters whose width was measured. */
export const MEASURED: ReadonlySet<string> = new Set(FACES.flatMap((face) => Object.keys(face)));
/** Advance width in the widest of the measured faces (reference/draw/text_widths.py) [em]. */
export const widestOf = (character: string): number => Math.max(...FACES.map((face) => face[character] ?? 0));

/** Reads a drawing back. Text boxes: width by real fonts, from 0.75 em above the base line to 0.2 below (capitals and descenders). */
export function readDrawing(svg: string): Drawn {
  const root = parseXml(svg);
  const elements = everyElement(root);
  const [, , width, height] = root.attributes.viewBox!.split(' ').map(Number) as [number, number, number, number];
  const texts = elements.filter((e) => e.name === 'text').map(drawnText);
  return { root, elements, width, height, texts };
}

function drawnText(element: Element): DrawnText {
  const a = element.attributes;
  const text = textOf(element);
  const size = Number(a['font-size']);
  const width = [...text].reduce((sum, c) => sum + widestOf(c), 0) * size;
  const [x, y] = [Number(a.x), Number(a.y)];
  const start = a['text-anchor'] === 'middle' ? -width / 2 : a['text-anchor'] === 'end' ? -width : 0;
  const turn = (Number((a.transform ?? 'rotate(0 ').slice('rotate('.length).split(' ')[0]) * Math.PI) / 180;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const corners = [
    [start, -0.75 * size],
    [start + width, -0.75 * size],
    [start + width, 0.2 * size],
    [start, 0.2 * size],
  ].map(([u, v]) => [x + u! * c - v! * s, y + u! * s + v! * c] as const);
  return { text, element, corners };
}

/** Pairs of texts that run into each other: two convex outlines that no side of either parts. */
export function overlaps(texts: readonly DrawnText[]): readonly string[] {
  const out: string[] = [];
  for (let i = 0; i < texts.length; i++)
    for (let j = 0; j < i; j++) if (!parted(texts[i]!.corners, texts[j]!.corners)) out.push(`${texts[i]!.text} / ${texts[j]!.text}`);
  return out;
}

function parted(a: DrawnText['corners'], b: DrawnText['corners']): boolean {
  for (const shape of [a, b])
    for (let i = 0; i < 4; i++) {
      const [p, q] = [shape[i]!, shape[(i + 1) % 4]!];
      const [nx, ny] = [q[1] - p[1], p[0] - q[0]];
      const [sa, sb] = [a, b].map((points) => points.map(([x, y]) => x * nx + y * ny));
      if (Math.max(...sa!) <= Math.min(...sb!) || Math.max(...sb!) <= Math.min(...sa!)) return true;
    }
  return false;
}

/** Texts that reach beyond the sheet. */
export const outside = (d: Drawn): readonly string[] =>
  d.texts.filter((t) => t.corners.some(([x, y]) => x < 0 || y < 0 || x > d.width || y > d.height)).map((t) => t.text);

/** Elements that carry a `data-` label. */
export const labelled = (elements: readonly Element[], key: string, value?: string): readonly Element[] =>
  elements.filter((e) => (value === undefined ? `data-${key}` in e.attributes : e.attributes[`data-${key}`] === value));

export const textsOf = (d: Drawn, key: string, value?: string): readonly string[] =>
  labelled(
    d.elements.filter((e) => e.name === 'text'),
    key,
    value,
  ).map(textOf);
