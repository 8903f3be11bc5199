import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { readSetFile } from '../../../src/set-file/index.ts';
import { buildSheet } from '../../../src/sheet/index.ts';
import { needPoppler, textOf } from './poppler.ts';

beforeAll(needPoppler, 240_000);

const read = (name: string): string => readFileSync(join('examples', name), 'utf8');

const made = new Map<string, Promise<string>>();

/** Words of a sheet; one that several tests read is laid out once. */
function sheetOf(name: string, change: (set: Record<string, never>) => object): Promise<string> {
  const set = JSON.parse(read(name)) as Record<string, never>;
  const text = JSON.stringify({ ...set, ...change(set) });
  const sheet = made.get(text) ?? wordsOf(text);
  made.set(text, sheet);
  return sheet;
}

async function wordsOf(set: string): Promise<string> {
  const result = readSetFile(set, { read });
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  const text = textOf(await buildSheet({ file: { ...result.value, place: result.value.place! }, parts: result.parts }));
  return text.replace(/\s+/g, ' ');
}

test('a coil of thin wire has the ohms of its copper, not less than one', async () => {
  const text = await sheetOf('medium-wave.json', () => ({}));
  // 58 m of copper of 1 mm^2 have 1 ohm (IEC 60028); 70 turns of 0.5 mm wire on 75 mm, two leads of 50 mm
  const metres = (70 * Math.hypot(Math.PI * 75.5, 0.8) + 2 * 50) / 1e3;
  const ohms = metres / 58 / ((Math.PI / 4) * 0.5 ** 2);
  expect(ohms).toBeGreaterThan(1);
  expect(text).toContain(`From end to end a meter shows about ${ohms.toPrecision(2)} Ω`);
  expect(text).not.toContain('less than 1 Ω');
});

test('a thick one has less than an ohm', async () => {
  expect(await sheetOf('dipole-and-small-coil.json', () => ({}))).toContain('From end to end a meter shows less than 1 Ω');
});

test('what lets the direct current past the phones is told where it is joined, and no transformer is measured before it is', async () => {
  const choked = await sheetOf('medium-wave.json', () => ({
    phones: { choke: { inductance: '10 H', resistance: '900 ohm' }, earpiece: { part: 'ceramic-earpiece' } },
  }));
  expect(choked).toContain('with the choke across it');
  expect(choked).toContain('Across the output, phones off, 900 Ω one way round');
  const transformed = await sheetOf('medium-wave.json', () => ({}));
  expect(transformed).toContain('Across the output more one way round than the other');
});

test('a detector that conducts at rest is not said to block', async () => {
  // slope of the law at no voltage, n k T / (q Is) with k T / q = 25.26 mV at 20 C; values of src/parts/detectors.json, beside 1 megohm;
  // Is(T) by Sze, Physics of Semiconductor Devices: Is0 (T / T0)^(X / n) exp(Eg / n (1 / V0 - 1 / V))
  const [n, volts] = [1.08, 0.02526];
  const current = 280e-9 * (293.15 / 300) ** (2 / n) * Math.exp((0.69 / n) * (1 / (volts * (300 / 293.15)) - 1 / volts));
  const rest = (n * volts) / current;
  const text = await sheetOf('dipole-and-small-coil.json', () => ({}));
  const told = /at most 1 MΩ one way round, perhaps only ([\d.]+) kΩ/.exec(text)!;
  expect(Math.abs((Number(told[1]) * 1e3) / (1 / (1e-6 + 1 / rest)) - 1)).toBeLessThan(0.05);
});

test('the table of the dial is true at its own angles where the rotation is no multiple of two degrees', async () => {
  const [L, rotation, least, most, strays] = [180e-9, 175, 5e-12, 30e-12, 4e-12];
  const text = await sheetOf('dipole-and-small-coil.json', () => ({
    tank: {
      coil: { kind: 'electrical', inductance: L, q: 200, frequency: 98e6, selfCapacitance: 0, turns: 5 },
      capacitor: { minimum: least, maximum: most, rotation: `${rotation} deg`, law: 'capacitance-linear', leadInductance: 0 },
      wiring: { length: 0 },
      strayCapacitance: strays,
      aerialCoupling: { kind: 'series-capacitor', capacitance: 0.01e-12 },
      detectorCoupling: { kind: 'tap', turns: 0.05 },
    },
  }));
  // Thomson: f = 1 / (2 pi sqrt(L C)), C rising evenly over the rotation
  for (const degrees of [50, 90, 170]) {
    const c = strays + least + ((most - least) * degrees) / rotation;
    const printed = Number(new RegExp(` ${degrees}\\.0° ([\\d.]+) MHz`).exec(text.slice(text.indexOf('set tunes to')))![1]);
    expect(Math.abs((printed * 1e6) / (1 / (2 * Math.PI * Math.sqrt(L * c))) - 1), `${degrees}`).toBeLessThan(1e-3);
  }
});
