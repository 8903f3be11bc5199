import { PDFDocument, PrintScaling } from '@cantoo/pdf-lib';
import { drawRuler } from '#draw';
import { GivenError, type Place } from '#engine';
import type { SetFile, UsedPart } from '#set-file';
import { findingsOf } from './findings.ts';
import { type Page, place, together } from './flow/place.ts';
import { QUIET } from './flow/words.ts';
import { PAPERS, type PaperName, roomWidth, SIDE } from './pdf/paper.ts';
import { Pen, POINTS } from './pdf/pen.ts';
import { Type } from './pdf/type.ts';
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
import { readSvg } from './svg/read-svg.ts';

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
/** The file is the same whenever it is made: dates say nothing. */
const NO_TIME = new Date(0);
/** From the lower edge of the page up to the ruler and to the number of the page; from its left edge to the upright ruler [mm]. */
const RULER = 18;
const NUMBER = 7;
const UPRIGHT = 4;

/**
 * Everything needed at the bench on paper, as a PDF file, true to scale: circuit, parts, coil, aerial, order of assembly, dial, trimming.
 *
 * The same input gives the same bytes.
 *
 * @throws GivenError for a set that cannot be, as the engine says it
 */
export async function buildSheet(input: SheetInput): Promise<Uint8Array> {
  const doc = await PDFDocument.create({ updateMetadata: false });
  const type = await Type.of(doc);
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
  paintPages(doc, type, place(blocks, paper), name);
  doc.setTitle(`${input.file.name === '' ? 'A set' : input.file.name}: build sheet`);
  doc.setProducer('Earshot');
  doc.setCreator('Earshot');
  doc.setCreationDate(NO_TIME);
  doc.setModificationDate(NO_TIME);
  doc.catalog.getOrCreateViewerPreferences().setPrintScaling(PrintScaling.None);
  return doc.save();
}

function paintPages(doc: PDFDocument, type: Type, pages: readonly Page[], name: string): void {
  const level = readSvg(drawRuler({ theme: 'light' }));
  const upright = readSvg(drawRuler({ upright: true, theme: 'light' }));
  pages.forEach(({ paper, placed }, i) => {
    const page = doc.addPage([paper.width * POINTS, paper.height * POINTS]);
    const pen = new Pen(page, paper.height, type);
    for (const { block, x, y } of placed) block.paint(pen, x, y);
    pen.at(SIDE - 2, paper.height - RULER, 1, () => paintSvg(level, pen));
    pen.at(UPRIGHT, paper.height - RULER - 102, 1, () => paintSvg(upright, pen));
    const base = paper.height - NUMBER;
    const look = { size: 2.8, colour: QUIET } as const;
    pen.text(`${short(name, type)}  ·  ${paper.name}, print at 100 %`, { x: SIDE, y: base }, look);
    pen.text(`page ${i + 1} of ${pages.length}`, { x: paper.width - SIDE, y: base }, { ...look, anchor: 'end' });
  });
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
