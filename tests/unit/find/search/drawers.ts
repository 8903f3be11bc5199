import { type SearchRequest, type Space, spaceOf } from '#find';
import type { Drawer } from '#set-file';
import { readDrawerFile } from '#set-file';

/** An invented place with one station, or with more of them. */
const STATION = {
  name: 'Fen Talk',
  frequency: '99.2 MHz',
  power: '8 kW',
  mastHeight: '110 m',
  distance: '2.6 km',
  bearing: '110 deg',
  stereo: false,
};
const SECOND = {
  name: 'Lantern',
  frequency: '96.1 MHz',
  power: '4 kW',
  polarisation: 'vertical',
  mastHeight: '60 m',
  distance: '2 km',
  bearing: '305 deg',
};
const LOW = { name: 'Gannet Medium Wave', frequency: '909 kHz', power: '20 kW', distance: '18 km', bearing: '75 deg' };

export type Given = Record<string, unknown>;

/** A file read as the command line reads it. */
export function requestOf(drawer: Given, wanted: readonly number[] = [0], stations: readonly object[] = [STATION]): SearchRequest {
  const text = JSON.stringify({
    version: 1,
    place: { name: 'Test Common', site: { height: '6 m' }, stations },
    ear: { room: '25 dB(A)' },
    drawer,
  });
  const read = readDrawerFile(text);
  if (!read.ok) throw new Error(JSON.stringify(read.problems, null, 1));
  const { place, ear, programme, drawer: own } = read.value;
  return { place, listener: { ear, programme }, drawer: own as Drawer, wanted };
}

/** Drawers small enough to try everything. */
export const SMALL: Readonly<Record<string, () => Space>> = {
  'a coil that is the aerial, two detectors, two formers': () =>
    spaceOf(
      requestOf({
        fromLibrary: ['air-variable-20', 'low-barrier-schottky', 'germanium-point-contact', 'ceramic-earpiece'],
        wires: { thick: { values: { wireDiameter: '1.5 mm' }, length: '30 cm', tapEvery: 1 } },
        formers: [
          { diameter: '10 mm', length: '10 mm' },
          { diameter: '16 mm', length: '8 mm' },
        ],
        resistors: ['220 k', '1 M'],
      }),
    ),
  'a dipole of rods, taps at whole turns, magnetic phones with a transformer or without': () =>
    spaceOf(
      requestOf({
        fromLibrary: ['air-variable-20', 'low-barrier-schottky', 'balanced-armature-300', 'matching-100k-to-600'],
        wires: { thin: { values: { wireDiameter: '0.8 mm' }, length: '24 cm', tapEvery: 2 } },
        formers: [{ diameter: '8 mm', length: '6.5 mm' }],
        rods: [{ length: '45 cm', diameter: '5 mm', count: 2 }],
      }),
    ),
  'rods for a beam and for a folded dipole, a link inside the coil, a choke or a transformer before a piezo': () =>
    spaceOf(
      requestOf({
        fromLibrary: ['air-variable-20', 'low-barrier-schottky', 'ceramic-earpiece', 'matching-100k-to-600'],
        wires: { thin: { values: { wireDiameter: '0.8 mm' }, length: '20 cm', tapEvery: 20 } },
        formers: [
          { diameter: '5 mm', length: '1.9 mm' },
          { diameter: '8 mm', length: '3.7 mm' },
        ],
        chokes: [{ inductance: '20 H', resistance: '2 k' }],
        rods: [{ length: '74 cm', diameter: '5 mm', count: 6 }],
      }),
    ),
  'two stations, both wanted, two capacitors': () =>
    spaceOf(
      requestOf(
        {
          fromLibrary: ['air-variable-20', 'film-gang-fm-20', 'germanium-point-contact', 'crystal-earplug'],
          wires: { bare: { values: { wireDiameter: '1 mm' }, length: '26 cm', tapEvery: 1 } },
          formers: [{ diameter: '12 mm', length: '5.5 mm' }],
          resistors: ['470 k'],
          fixedCapacitors: ['4.7 pF'],
        },
        [0, 1],
        [STATION, SECOND],
      ),
    ),
};

/** A drawer with something of everything, far too large to try all of it. */
export const FULL: Given = {
  fromLibrary: [
    'air-variable-20',
    'air-variable-50',
    'low-barrier-schottky',
    'germanium-point-contact',
    'ceramic-earpiece',
    'balanced-armature-300',
    'matching-100k-to-600',
  ],
  wires: {
    bare: { values: { wireDiameter: '1 mm' }, length: '4 m' },
    thin: { values: { wireDiameter: '0.5 mm' }, length: '10 m', tapEvery: 1 },
  },
  formers: [{ diameter: '8 mm' }, { diameter: '12 mm', length: '30 mm' }, { diameter: '30 mm', stays: { permittivity: 2.5 } }],
  rods: [{ length: '80 cm', diameter: '5 mm', count: 2 }],
  resistors: ['220 k', '1 M'],
  fixedCapacitors: ['2.2 pF', '10 pF', '220 pF'],
};

export const mediumWave = (drawer: Given): SearchRequest => requestOf(drawer, [0], [LOW]);
