/** A size of paper and the room on it. Lengths in millimetres. */
export interface Paper {
  readonly name: string;
  readonly width: number;
  readonly height: number;
}

export type PaperName = 'a4' | 'letter';

/** Source: ISO 216 (A4); ANSI/ASME Y14.1, size A (Letter), 8 1/2 in by 11 in. */
export const PAPERS: Readonly<Record<PaperName, Paper>> = {
  a4: { name: 'A4', width: 210, height: 297 },
  letter: { name: 'Letter', width: 215.9, height: 279.4 },
};

export const turned = (p: Paper): Paper => ({ name: p.name, width: p.height, height: p.width });

/** Left and right; printers leave no more than this unprinted, and a hole punch takes no more. */
export const SIDE = 15;
export const TOP = 13;
/** With the ruler and the number of the page. */
export const FOOT = 24;

/** Drawings have a margin of their own; so much of it may lie outside the room, so that they begin where the text does. */
export const BLEED = 4;

export const roomWidth = (p: Paper): number => p.width - 2 * SIDE;
export const roomHeight = (p: Paper): number => p.height - TOP - FOOT;
