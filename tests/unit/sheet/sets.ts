import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readSetFile } from '../../../src/set-file/index.ts';
import type { SheetInput } from '../../../src/sheet/index.ts';

const read = (name: string): string => readFileSync(join('examples', name), 'utf8');

type Json = Record<string, unknown> & {
  tank: Record<string, unknown> & { coil: Record<string, unknown> };
  place: { stations: { name: string }[] };
};

/** An example of the house as a sheet is made from it. */
export const example = (name: string): SheetInput => input(read(name));

function input(text: string): SheetInput {
  const result = readSetFile(text, { read });
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  const { place } = result.value;
  return { file: { ...result.value, place: place! }, parts: result.parts };
}

/** The demo with something about it changed. */
function changed(change: (set: Json) => void): SheetInput {
  const set = JSON.parse(read('dipole-and-small-coil.json')) as Json;
  set.place = (JSON.parse(read('fenmarket.json')) as Json).place;
  change(set);
  return input(JSON.stringify(set));
}

export const LONG_NAME = 'The Extraordinarily Long-Winded Broadcasting Service of the Fenlands and Adjacent Counties';

/** Sets that are built seldom, and names that are. */
export const UNUSUAL = {
  'twelve turns, three quarters of a circle': () =>
    changed(({ tank }) => {
      Object.assign(tank.coil, { turns: 12, length: '30 mm', innerDiameter: '14 mm' });
      tank.capacitor = { minimum: '2 pF', maximum: '8 pF', rotation: '270 deg' };
    }),
  'a dial that turns twice round': () =>
    changed(({ tank }) => {
      tank.capacitor = { minimum: '3 pF', maximum: '20 pF', rotation: '720 deg' };
    }),
  'a coil by its values': () =>
    changed(({ tank }) => {
      tank.coil = { kind: 'electrical', inductance: '180 nH', q: 211, frequency: '98 MHz', selfCapacitance: '0.55 pF', turns: 1 };
      tank.aerialCoupling = { kind: 'tap', turns: '0.1' };
      tank.detectorCoupling = { kind: 'tap', turns: '0.8' };
    }),
  'a link, a capacitor to the detector': () =>
    changed(({ tank }) => {
      tank.aerialCoupling = { kind: 'link', turns: 2, innerDiameter: '11 mm', wireDiameter: '0.8 mm', pitch: '1.6 mm', gap: '2.5 mm' };
      tank.detectorCoupling = { kind: 'series-capacitor', capacitance: '4.7 pF' };
      tank.detectorReturn = '1.5 M';
    }),
  'a coil too wide for one strip, out of reach': () =>
    changed(({ tank }) => {
      Object.assign(tank.coil, { turns: 3, length: '60 mm', innerDiameter: '160 mm' });
      tank.detectorCoupling = { kind: 'direct' };
    }),
  'one turn, out of reach': () =>
    changed(({ tank }) => {
      Object.assign(tank.coil, { turns: 1, length: '1 mm', innerDiameter: '8 mm' });
      tank.detectorCoupling = { kind: 'direct' };
    }),
  'names long and foreign': () =>
    changed((set) => {
      set.name = 'Łódź без батареи ☕';
      const names = [LONG_NAME, 'Радио Жуковка', '中央広播電台', 'إذاعة السلام 📻'];
      set.place.stations.forEach((s, i) => {
        s.name = names[i]!;
      });
    }),
} as const;
