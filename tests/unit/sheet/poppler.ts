import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** The tests ask poppler, an independent reader of PDF files; on Debian and its kin it is installed if it may be. */
export function needPoppler(): void {
  if (['pdftotext', 'pdftoppm'].every((tool) => spawnSync(tool, ['-v']).status === 0)) return;
  execFileSync(process.execPath, ['scripts/ensure.mjs', 'poppler'], { stdio: 'inherit' });
}

function withFile<T>(pdf: Uint8Array, work: (file: string, folder: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'earshot-sheet-'));
  try {
    const file = join(folder, 'sheet.pdf');
    writeFileSync(file, pdf);
    return work(file, folder);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** Everything that can be read, words apart by one space; the sign for ohms, which Unicode has twice, as the Greek letter. */
export const textOf = (pdf: Uint8Array): string =>
  withFile(pdf, (file) => execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' }).replace(/\s+/g, ' ').normalize());

/** The same in the order in which it was written, as viewers copy it. */
export const copiedFrom = (pdf: Uint8Array): string =>
  withFile(pdf, (file) => execFileSync('pdftotext', ['-raw', file, '-'], { encoding: 'utf8' }).replace(/\s+/g, ' '));

export const infoOf = (pdf: Uint8Array): string =>
  withFile(pdf, (file) => execFileSync('pdfinfo', [file], { encoding: 'utf8', env: { ...process.env, TZ: 'UTC' } }));

/** A word and the room it takes [mm from the upper left corner]. */
export interface Word {
  readonly text: string;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}
export interface WordPage {
  readonly width: number;
  readonly height: number;
  readonly words: readonly Word[];
}

const MM = 25.4 / 72;

export function wordsOf(pdf: Uint8Array): readonly WordPage[] {
  const xml = withFile(pdf, (file) => execFileSync('pdftotext', ['-bbox', file, '-'], { encoding: 'utf8' }));
  return xml
    .split('<page ')
    .slice(1)
    .map((page) => {
      const [width, height] = /width="([\d.]+)" height="([\d.]+)"/
        .exec(page)!
        .slice(1)
        .map((n) => Number(n) * MM) as [number, number];
      const words = [...page.matchAll(/<word xMin="([-\d.]+)" yMin="([-\d.]+)" xMax="([-\d.]+)" yMax="([-\d.]+)">(.*?)<\/word>/g)].map(
        (m) => {
          const [left, top, right, bottom] = m.slice(1, 5).map((n) => Number(n) * MM) as [number, number, number, number];
          return { text: m[5]!, left, top, right, bottom };
        },
      );
      return { width, height, words };
    });
}

/** A page as grey dots, ten to the millimetre: 0 black, 255 white. */
export class Dots {
  readonly width: number;
  readonly height: number;
  readonly #grey: Uint8Array;

  constructor(pgm: Buffer) {
    const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(pgm.subarray(0, 40).toString('latin1'))!;
    this.width = Number(head[1]);
    this.height = Number(head[2]);
    this.#grey = pgm.subarray(head[0].length);
  }

  dark(x: number, y: number, below = 128): boolean {
    return this.#grey[y * this.width + x]! < below;
  }
}
export const PER_MM = 10;

export function dotsOf(pdf: Uint8Array): readonly Dots[] {
  return withFile(pdf, (file, folder) => {
    execFileSync('pdftoppm', ['-gray', '-r', `${PER_MM * 25.4}`, file, join(folder, 'page')]);
    const pages = readdirSync(folder)
      .filter((f) => f.endsWith('.pgm'))
      .sort();
    return pages.map((f) => new Dots(readFileSync(join(folder, f))));
  });
}

/** Part of a page [mm]. */
export interface Region {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}
/** Dots in a length [mm]. */
export const px = (mm: number): number => Math.round(mm * PER_MM);

/** Longest stretches without a gap, along rows and along columns [mm]. */
export function longest(dots: Dots, r: Region, below = 128): { readonly across: number; readonly down: number } {
  const run = (outer: [number, number], inner: [number, number], dark: (o: number, i: number) => boolean): number => {
    let best = 0;
    for (let o = outer[0]; o < outer[1]; o++) {
      let now = 0;
      for (let i = inner[0]; i < inner[1]; i++) {
        now = dark(o, i) ? now + 1 : 0;
        best = Math.max(best, now);
      }
    }
    return best / PER_MM;
  };
  const [xs, ys]: [number, number][] = [
    [px(r.left), px(r.right)],
    [px(r.top), px(r.bottom)],
  ];
  return { across: run(ys!, xs!, (y, x) => dots.dark(x, y, below)), down: run(xs!, ys!, (x, y) => dots.dark(x, y, below)) };
}
