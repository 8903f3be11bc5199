import { readFileSync } from 'node:fs';
import { PDFDocument, PrintScaling } from '@cantoo/pdf-lib';
import { beforeAll, expect, test } from 'vitest';
import { readShared } from '../../../src/app/model/share-link.ts';
import { sheetCode } from '../../../src/set-file/index.ts';
import { buildSheet } from '../../../src/sheet/index.ts';
import { copiedFrom, infoOf, needPoppler, textOf } from './poppler.ts';
import { example, UNUSUAL } from './sets.ts';

beforeAll(needPoppler, 240_000);

/** What the files say, by hand in the units of the bench; values of named parts as src/parts has them. */
const DEMO = [
  ...['1450 mm', '725 mm', 'Ø 4 mm', '110°'],
  ...['Wind 5 turns', '10 mm across', 'Ø 1 mm copper', '2 mm from middle to middle', '5 mm of it at each end', 'Ø 10 mm'],
  ...['1/4 turn from the cold end', '4 turns from the cold end'],
  ...['3 pF to 20 pF', '180.0°', '220 pF', '1 MΩ', '15 nF', '20 MΩ', '280 nA', '1.08', '0.3 pF', 'loss tangent 0.02'],
  ...['99.2 MHz', '94.6 MHz', '101.7 MHz', '95.4 MHz'],
  // wire: 5 turns of the screw pi (10 + 1) mm round and 2 mm on, and two leads of 5 mm
  `Cut ${Math.round(5 * Math.hypot(Math.PI * 11, 2) + 10)} mm`,
  // the strip: pi times 10 mm
  '31.4 mm from seam to seam',
];
const MEDIUM_WAVE = [
  ...['20 m', '8000 mm', '40 Ω'],
  ...['Wind 70 turns', '75 mm across', 'Ø 0.5 mm', '0.8 mm from middle to middle', '50 mm of it at each end', '56 mm'],
  ...['permittivity 2.3', 'loss tangent 0.005', '20 turns from the cold end', '35 turns from the cold end', '150 mm', '8 pF', '220 pF'],
  ...['909 kHz', '1215 kHz'],
];
const LINK = ['2 turns', '11 mm', '0.8 mm', '1.6 mm', '2.5 mm', '4.7 pF', '1.5 MΩ'];
const VALUES = ['180 nH', '211', '98 MHz', '0.55 pF', '0.1 from the cold end', '0.8 from the cold end'];

test.each([
  ['demo', () => example('dipole-and-small-coil.json'), DEMO],
  ['medium wave', () => example('medium-wave.json'), MEDIUM_WAVE],
  ['link', UNUSUAL['a link, a capacitor to the detector'], LINK],
  ['coil by values', UNUSUAL['a coil by its values'], VALUES],
])('%s: the text carries every number of the set', async (_, make, numbers) => {
  const text = textOf(await buildSheet(make()));
  expect(numbers.filter((n) => !text.includes(n))).toEqual([]);
});

test('cautions stand where the risk is taken, once each', async () => {
  const text = textOf(await buildSheet(example('dipole-and-small-coil.json')));
  for (const words of ['overhead lines', 'licensed work', 'breathe the fumes']) expect(text.split(words)).toHaveLength(2);
  expect(text.indexOf('breathe the fumes')).toBeGreaterThan(text.indexOf('Order of assembly'));
  expect(text.indexOf('breathe the fumes')).toBeLessThan(text.indexOf('Solder the coil'));
});

test('the same set gives the same bytes, and the file asks printers not to scale', async () => {
  const make = () => buildSheet(example('rod-too-far.json'));
  const [a, b] = [await make(), await make()];
  expect(Buffer.from(a).equals(Buffer.from(b))).toBe(true);
  const doc = await PDFDocument.load(a, { updateMetadata: false });
  expect(doc.catalog.getViewerPreferences()?.getPrintScaling()).toBe(PrintScaling.None);
  expect(infoOf(a)).toMatch(/CreationDate:\s+Thu Jan\s+1 00:00:00 1970/);
});

test('the code on paper, as copied off it, reopens the set', async () => {
  const document: unknown = JSON.parse(readFileSync('examples/rod-too-far.json', 'utf8'));
  const drawer: unknown = JSON.parse(readFileSync('examples/drawer.json', 'utf8')).drawer;
  // what it was found in is left out
  const code = await sheetCode({ document: { ...(document as object), drawer }, files: {} });
  const text = copiedFrom(await buildSheet({ ...example('rod-too-far.json'), code }));
  const printed = text.slice(text.indexOf('set1='), text.indexOf(`${code.length} characters`));
  expect(printed.replaceAll(' ', '')).toBe(code);
  const back = await readShared(printed);
  expect(back.ok && back.work.document).toEqual(document);
  const none = textOf(await buildSheet({ ...example('rod-too-far.json'), code: 'x'.repeat(3000) }));
  expect(none).toContain('Keep its file');
});
