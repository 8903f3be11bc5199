import { drawRuler } from '#draw';
import { GivenError, type Place } from '#engine';
import type { SetFile, UsedPart } from '#set-file';
import { findingsOf } from './findings.ts';
import type { Pen } from './flow/pen.ts';
import { type Page, place, together } from './flow/place.ts';
import { QUIET } from './flow/words.ts';
import { PAPERS, type PaperName, roomWidth, SIDE } from './pdf/paper.ts';
import type { Type } from './pdf/type.ts';
import { printableWithin } from './printable.ts';
import { aerial } from './sections/aerial.ts';
import { assembly } from './sections/assembly.ts';
import { circuit } from './sections/circuit.ts';
import { coil } from './sections/coil.ts';
import type { Context } from './sections/context.ts';
import { dial } from './sections/dial.ts';
import { front } from './sections/front.ts';
import { keep } from './sections/keep.ts';
import { parts } from './sections/parts.ts';
import { trimming } from './sections/trimming.ts';
import { paintSvg } from './svg/paint-svg.ts';
import { readSvg, type SvgElement } from './svg/read-svg.ts';

export interface SheetInput {
  /** the set and its place, as read from its file */
  readonly file: SetFile & { readonly place: Place };
  readonly parts: readonly UsedPart[];
  /** index of the station it is built for; the one heard best where left out */
  readonly station?: number | undefined;
  readonly paper?: PaperName | undefined;
  /** what reopens the set, as the app's links carry it; null where there is none */
  readonly code?: string | null | undefined;
}

/** A code longer than this is no longer read off paper [characters]: some thirty lines. */
const LONGEST_CODE = 1800;
/** From the lower edge of the page up to the ruler and to the number of the page; from its left edge to the upright ruler [mm]. */
const RULER = 18;
const NUMBER = 7;
const UPRIGHT = 4;

/** A sheet with everything in its place, before it is drawn. */
export interface SheetLayout {
  readonly pages: readonly Page[];
  readonly title: string;
  /** at the foot of every page */
  readonly foot: string;
  /** of every page, level and upright */
  readonly rulers: { readonly level: SvgElement; readonly upright: SvgElement };
}

/**
 * Lays a sheet out.
 *
 * @throws GivenError for a set that cannot be, as the engine says it
 */
export function sheetLayout(input: SheetInput, type: Type): SheetLayout {
  const changed = new Set<string>();
  // first of all, so that drawings leave room for what will be printed
  const { file, parts: used } = printableWithin({ file: input.file, parts: input.parts }, type, (as) => changed.add(as));
  const paper = PAPERS[input.paper ?? 'a4'];
  if (!paper) throw new GivenError('paper', JSON.stringify(input.paper), 'it is no paper known here', 'Give a4 or letter.');
  const code = input.code ?? null;
  const context: Context = {
    findings: findingsOf(file, used, input.station),
    paper,
    type,
    width: roomWidth(paper),
    code: code !== null && code.length <= LONGEST_CODE ? code : null,
    changed: [...changed],
  };
  const blocks = [front, circuit, parts, coil, aerial, assembly, dial, trimming, keep].flatMap((section) =>
    together(section(context), paper),
  );
  const name = file.name === '' ? 'A set' : file.name;
  return {
    pages: place(blocks, paper),
    title: `${input.file.name === '' ? 'A set' : input.file.name}: build sheet`,
    foot: `${short(name, type)}  ·  ${paper.name}, print at 100 %`,
    rulers: { level: readSvg(drawRuler({ theme: 'light' })), upright: readSvg(drawRuler({ upright: true, theme: 'light' })) },
  };
}

/** Draws one page with its rulers, foot and number. */
export function paintPage({ pages, foot, rulers }: SheetLayout, index: number, pen: Pen): void {
  const { paper, placed } = pages[index]!;
  for (const { block, x, y } of placed) block.paint(pen, x, y);
  pen.at(SIDE - 2, paper.height - RULER, 1, () => paintSvg(rulers.level, pen));
  pen.at(UPRIGHT, paper.height - RULER - 102, 1, () => paintSvg(rulers.upright, pen));
  const base = paper.height - NUMBER;
  const look = { size: 2.8, colour: QUIET } as const;
  pen.text(foot, { x: SIDE, y: base }, look);
  pen.text(`page ${index + 1} of ${pages.length}`, { x: paper.width - SIDE, y: base }, { ...look, anchor: 'end' });
}

/** A name that leaves room for the rest of the foot. */
function short(name: string, type: Type): string {
  if (type.width(name, 'plain') * 2.8 <= 95) return name;
  let out = '';
  for (const c of name) {
    if (type.width(`${out}${c}…`, 'plain') * 2.8 > 95) break;
    out += c;
  }
  return `${out}…`;
}
