import type { AerialWire, WireMetal, WireShape, WireStructure, WiresDescription } from '#engine';
import { wireStructure } from '#engine';

const RIGHT = Math.PI / 2;
const metal: WireMetal = 'copper';
const NORTH = { kind: 'horizontal', broadside: 0 } as const;
const UPRIGHT = { angle: 0, bearing: 0 };
const rod = { length: 0.75, diameter: 0.006, metal };
const thin = { diameter: 0.001, metal };
const dipole = { kind: 'dipole', length: 1.44, diameter: 0.006, metal, includedAngle: Math.PI, bend: 'down', slope: 0 } as const;
const folded = { kind: 'folded-dipole', length: 1.44, diameter: 0.006, secondDiameter: 0.006, spacing: 0.04, metal } as const;
const beam = {
  kind: 'beam',
  reflector: { length: 1.52, behind: 0.6 },
  driven: { length: 1.42, element: { kind: 'straight' } },
  directors: [{ length: 1.36, ahead: 0.5 }],
  diameter: 0.008,
  metal,
  polarisation: 'horizontal',
  bearing: 0,
} as const;
const ring = { kind: 'round-loop', diameter: 0.1, turns: 1, windingLength: 0, wireDiameter: 0.002, metal, sides: 24 } as const;

const SHAPES: Readonly<Record<string, WireShape>> = {
  'rod-drop-wire': { kind: 'rod', rod, lean: UPRIGHT, against: { kind: 'drop-wire', length: 0.75, ...thin } },
  'rod-case': {
    kind: 'rod',
    rod,
    lean: { angle: 0.5, bearing: 1 },
    against: { kind: 'box', width: 0.16, depth: 0.08, height: 0.1, metal },
  },
  'rod-radials': {
    kind: 'rod',
    rod,
    lean: UPRIGHT,
    against: { kind: 'radials', count: 4, droop: 0.7, length: 0.75, diameter: 0.003, metal },
  },
  'rod-three-radials': {
    kind: 'rod',
    rod,
    lean: UPRIGHT,
    against: { kind: 'radials', count: 3, droop: 0, length: 0.7, diameter: 0.003, metal },
  },
  'rod-earth': { kind: 'rod', rod, lean: UPRIGHT, against: { kind: 'earth-wire', length: 2.5, earthResistance: 0, ...thin } },
  'rod-sloping-earth': { kind: 'rod', rod, lean: UPRIGHT, against: { kind: 'earth-wire', length: 3.2, earthResistance: 80, ...thin } },
  dipole: { ...dipole, orientation: NORTH },
  'dipole-upright': { ...dipole, orientation: { kind: 'vertical' } },
  'dipole-sloping': { ...dipole, orientation: { kind: 'horizontal', broadside: 0.4 }, slope: 0.6 },
  'v-inverted': { ...dipole, orientation: NORTH, includedAngle: 2 },
  'v-level': { ...dipole, orientation: NORTH, includedAngle: RIGHT, bend: 'forward' },
  folded: { ...folded, orientation: NORTH },
  'folded-two-thicknesses': { ...folded, secondDiameter: 0.002, orientation: { kind: 'vertical' } },
  beam,
  'beam-folded': { ...beam, driven: { length: 1.42, element: { kind: 'folded', spacing: 0.04 } }, bearing: 0.7 },
  'beam-upright': { ...beam, polarisation: 'vertical', driven: { length: 1.42, element: { kind: 'folded', spacing: 0.04 } } },
  'beam-six': {
    ...beam,
    directors: [0.25, 0.65, 1.2, 1.9].map((ahead, i) => ({ ahead, length: 1.36 - 0.012 * i })),
    bearing: 2,
  },
  'beam-no-reflector': { ...beam, reflector: null },
  'loop-round': { ...ring, axis: { kind: 'horizontal', plane: 0.4 } },
  'loop-turns': {
    ...ring,
    diameter: 0.06,
    turns: 3,
    windingLength: 0.03,
    wireDiameter: 0.001,
    sides: 12,
    axis: { kind: 'vertical' },
  },
  'loop-turns-upright': { ...ring, turns: 5, windingLength: 0.04, axis: { kind: 'horizontal', plane: RIGHT } },
  'loop-square': { kind: 'square-loop', side: 0.77, diameter: 0.003, metal, bearing: 0.3, fedAt: 'bottom' },
  'loop-square-side': { kind: 'square-loop', side: 0.77, diameter: 0.003, metal, bearing: 0, fedAt: 'side' },
  'given-tee': {
    kind: 'free-list',
    wires: [
      { from: { x: -0.5, y: 0, z: 3 }, to: { x: 0.6, y: 0, z: 3 }, diameter: 0.002, metal },
      { from: { x: 0, y: 0.1, z: 2 }, to: { x: 0, y: 0, z: 3 }, diameter: 0.004, metal },
    ],
    feed: { wire: 1, at: 0.4 },
    loads: [],
  },
  'given-loaded': {
    kind: 'free-list',
    wires: [{ from: { x: -1, y: 0, z: 6 }, to: { x: 1, y: 0, z: 6 }, diameter: 0.002, metal }],
    feed: { wire: 0, at: 0.5 },
    loads: [
      { place: { wire: 0, at: 0.2 }, kind: 'series', inductance: 2.2e-6 },
      { place: { wire: 0, at: 0.8 }, kind: 'parallel', inductance: 2.2e-6, capacitance: 12e-12 },
      { place: { wire: 0, at: 0.6 }, kind: 'impedance', resistance: 50, reactance: -20 },
    ],
  },
  'given-long-wire': {
    kind: 'free-list',
    wires: [
      { from: { x: 0, y: 0, z: 0 }, to: { x: 0, y: 0, z: 9 }, diameter: 0.002, metal },
      { from: { x: 0, y: 0, z: 9 }, to: { x: 24, y: 0, z: 8 }, diameter: 0.002, metal },
    ],
    feed: { wire: 0, at: 0 },
    loads: [],
  },
};

const GROUNDS: Readonly<Record<string, WiresDescription['ground']>> = {
  'rod-earth': { kind: 'perfect' },
  'rod-sloping-earth': { kind: 'perfect' },
  'given-long-wire': { kind: 'perfect' },
  'given-loaded': { kind: 'real', permittivity: 15, conductivity: 5e-3 },
  beam: { kind: 'real', permittivity: 15, conductivity: 5e-3 },
  'v-inverted': { kind: 'perfect' },
  'dipole-upright': { kind: 'perfect' },
};

/** One or more of each kind of aerial, as a maker would cut it. */
export const DESCRIBED: Readonly<Record<string, WiresDescription>> = Object.fromEntries(
  Object.entries(SHAPES).map(([name, shape]) => [
    name,
    {
      kind: 'wires',
      shape,
      height: name.includes('earth') ? 2.5 : name === 'dipole-upright' ? 1.2 : 3,
      ground: GROUNDS[name] ?? { kind: 'free-space' },
    },
  ]),
);

export const structureOf = (name: string): WireStructure => wireStructure(DESCRIBED[name]!);

/** Length of a wire [m]. */
export const lengthOf = ({ from, to }: AerialWire): number => Math.hypot(to.x - from.x, to.y - from.y, to.z - from.z);
