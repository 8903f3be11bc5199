import { PART_SLOTS } from '#set-file';

/** What a form begins with when a person chooses it: ordinary values, which read without complaint and are then changed. */
export function startOf(by: string, word: string, path: readonly (string | number)[]): Record<string, unknown> {
  const at = slotOf(path);
  return { [by]: word, ...(STARTS[`${at}:${word}`] ?? STARTS[`*.${path.at(-1)}:${word}`] ?? STARTS[`*:${word}`] ?? {}) };
}

/** What an optional part of a set begins with when it is added. */
export const partStartOf = (path: readonly (string | number)[]): unknown => ADDED[slotOf(path)] ?? {};

/** A place in the set; of a part in the drawer the one that it is made for. */
function slotOf(path: readonly (string | number)[]): string {
  const keys = path.filter((k) => typeof k === 'string');
  const slot = keys[0] === 'drawer' && keys[3] === 'values' ? PART_SLOTS.find((s) => s.category === keys[1]) : undefined;
  return (slot ? [...slot.path, ...keys.slice(4)] : keys).join('.');
}

const LEVEL = { kind: 'horizontal', broadside: 'N' };
const UPRIGHT_LOOP = { kind: 'horizontal', plane: 'N' };
const POINTS = [
  ['0 m', '-0.7 m', '3 m'],
  ['0 m', '0.7 m', '3 m'],
];

/** By path and word; `*.key` is for that key anywhere, `*` for a word anywhere. */
const STARTS: Readonly<Record<string, Record<string, unknown>>> = {
  'aerial:electrical': { impedance: '75 ohm', gain: '0 dBd', orientation: 'vertical' },
  'aerial:dipole': { kind: 'dipole', length: '1.45 m', orientation: LEVEL },
  'aerial:whip': { length: '75 cm' },
  'aerial:loop': { diameter: '20 cm', axis: UPRIGHT_LOOP },
  'aerial:wire-to-earth': { vertical: '5 m', horizontal: '10 m' },
  'aerial:coil': { axis: UPRIGHT_LOOP },
  'aerial:wires': { shape: 'rod', length: '75 cm' },
  'aerial:rod': { kind: 'wires', length: '75 cm' },
  'aerial:folded-dipole': { kind: 'wires', length: '1.4 m', orientation: LEVEL },
  'aerial:beam': {
    kind: 'wires',
    bearing: 'N',
    elements: [
      { length: '1.5 m', position: '0 m' },
      { length: '1.43 m', position: '0.6 m' },
      { length: '1.3 m', position: '1.2 m' },
    ],
  },
  'aerial:round-loop': { kind: 'wires', diameter: '20 cm', axis: UPRIGHT_LOOP },
  'aerial:square-loop': { kind: 'wires', side: '75 cm', bearing: 'N' },
  'aerial:free-list': { kind: 'wires', wires: [{ from: POINTS[0], to: POINTS[1] }], feed: { wire: 0 } },
  'aerial.against:drop-wire': { length: '75 cm' },
  'aerial.against:box': { width: '15 cm', depth: '5 cm', height: '10 cm' },
  'aerial.against:radials': { count: 4, length: '75 cm' },
  'aerial.against:earth-wire': { length: '2 m' },
  'aerial.counterpoise:drop-wire': { length: '75 cm' },
  'aerial.counterpoise:set': { size: '15 cm' },
  'aerial.counterpoise:earth-wire': { length: '2 m' },
  '*.orientation:horizontal': { broadside: 'N' },
  '*.axis:horizontal': { plane: 'N' },
  'tank.coil:geometry': { turns: 5, innerDiameter: '10 mm', wireDiameter: '1 mm', length: '10 mm' },
  'tank.coil:electrical': { inductance: '200 nH', q: 200, frequency: '100 MHz' },
  '*:tap': { turns: 1 },
  '*:link': { turns: 1, innerDiameter: '14 mm', wireDiameter: '1 mm' },
  '*:series-capacitor': { capacitance: '2 pF' },
  'detector:junction': { saturationCurrent: '3 uA', junctionCapacitance: '0.2 pF' },
  'detector:channel': { threshold: '-0.4 V', transconductanceFactor: '5 mA/V^2', gateCapacitance: '3 pF', drainCapacitance: '3 pF' },
  'detector:table': {
    points: [
      ['-0.2 V', '-2 uA'],
      ['0 V', '0 A'],
      ['0.2 V', '20 uA'],
      ['0.4 V', '500 uA'],
    ],
  },
  'phones.earpiece:piezo': {
    coupling: 'plug',
    capacitance: '10 nF',
    sensitivity: '100 dB SPL',
    sensitivityAt: '1 V',
    coupler: 'IEC 60318-4',
  },
  'phones.earpiece:magnetic': {
    coupling: 'supra-aural',
    resistance: '2 kohm',
    inductance: '1 H',
    sensitivity: '100 dB SPL',
    sensitivityAt: '1 mW',
    coupler: 'IEC 60318-1',
  },
  '*:noise-criterion': { rating: 20 },
  '*:a-weighted': { level: '30 dB(A)' },
  '*:bands': {
    bands: [
      { frequency: '250 Hz', level: '25 dB SPL' },
      { frequency: '1 kHz', level: '18 dB SPL' },
      { frequency: '4 kHz', level: '10 dB SPL' },
    ],
  },
};

const ADDED: Readonly<Record<string, unknown>> = {
  'aerial.feeder': { length: '5 m' },
  'aerial.ground': 'medium-dry',
  'tank.coil.former': { permittivity: 2.5 },
  'tank.coil.wire': { part: 'bare-copper-1mm' },
  'tank.aerialCoupling': { kind: 'tap', turns: 1 },
  'phones.choke': { inductance: '10 H', resistance: '500 ohm' },
  'phones.transformer': { part: 'matching-100k-to-1k2' },
  'phones.earpiece.motional': { resistance: '2 kohm', inductance: '50 mH', capacitance: '1 uF' },
  'place.stations': { name: 'New station', frequency: '98 MHz', power: '1 kW', mastHeight: '60 m', distance: '5 km', bearing: 'N' },
  'place.stations.coordinates': { latitude: '0°', longitude: '0°' },
  'place.site.coordinates': { latitude: '0°', longitude: '0°' },
  'place.site.building': 'traditional',
};
