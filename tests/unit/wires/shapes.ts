import type { WireGround, WireMetal, WireShape, WiresDescription } from '#engine';

const FREE: WireGround = { kind: 'free-space' };
const NORTH = { kind: 'horizontal', broadside: 0 } as const;
const UPRIGHT = { angle: 0, bearing: 0 };

/** One of each built-in shape, of a size a maker would cut for the FM band. */
export function shapes(metal: WireMetal): Readonly<Record<string, WireShape>> {
  const rod = { length: 0.75, diameter: 0.006, metal };
  const thin = { diameter: 0.001, metal };
  const dipole = { length: 1.44, diameter: 0.006, metal, orientation: NORTH } as const;
  const beam = { diameter: 0.008, metal, polarisation: 'horizontal', bearing: 0 } as const;
  const elements = { reflector: { length: 1.52, behind: 0.6 }, directors: [{ length: 1.36, ahead: 0.5 }] };
  return {
    'rod with drop wire': { kind: 'rod', rod, lean: UPRIGHT, against: { kind: 'drop-wire', length: 0.75, ...thin } },
    'leaning rod with box': {
      kind: 'rod',
      rod,
      lean: { angle: 0.5, bearing: 1 },
      against: { kind: 'box', width: 0.16, depth: 0.08, height: 0.1, metal },
    },
    'rod with radials': {
      kind: 'rod',
      rod,
      lean: UPRIGHT,
      against: { kind: 'radials', count: 4, droop: 0.7, length: 0.75, diameter: 0.003, metal },
    },
    'rod with wire to earth': {
      kind: 'rod',
      rod,
      lean: UPRIGHT,
      against: { kind: 'earth-wire', length: 2.5, earthResistance: 0, ...thin },
    },
    dipole: { kind: 'dipole', ...dipole, includedAngle: Math.PI, bend: 'down', slope: 0 },
    'inverted V': { kind: 'dipole', ...dipole, includedAngle: 2, bend: 'down', slope: 0 },
    'sloping dipole': { kind: 'dipole', ...dipole, includedAngle: Math.PI, bend: 'down', slope: 0.6 },
    'folded dipole': { kind: 'folded-dipole', ...dipole, secondDiameter: 0.006, spacing: 0.04 },
    'folded dipole of two thicknesses': { kind: 'folded-dipole', ...dipole, secondDiameter: 0.002, spacing: 0.04 },
    'three-element beam': { kind: 'beam', ...beam, ...elements, driven: { length: 1.42, element: { kind: 'straight' } } },
    'beam with folded driven element': {
      kind: 'beam',
      ...beam,
      ...elements,
      driven: { length: 1.42, element: { kind: 'folded', spacing: 0.04 } },
    },
    '10 cm loop': {
      kind: 'round-loop',
      diameter: 0.1,
      turns: 1,
      windingLength: 0,
      wireDiameter: 0.002,
      metal,
      sides: 24,
      axis: { kind: 'horizontal', plane: 0.4 },
    },
    'loop of three turns': {
      kind: 'round-loop',
      diameter: 0.06,
      turns: 3,
      windingLength: 0.03,
      wireDiameter: 0.001,
      metal,
      sides: 12,
      axis: { kind: 'vertical' },
    },
    'square full-wave loop': { kind: 'square-loop', side: 0.77, diameter: 0.003, metal, bearing: 0.3, fedAt: 'bottom' },
    'free list: a T of two thicknesses': {
      kind: 'free-list',
      wires: [
        { from: { x: -0.5, y: 0, z: 3 }, to: { x: 0.6, y: 0, z: 3 }, diameter: 0.002, metal },
        { from: { x: 0, y: 0.1, z: 2 }, to: { x: 0, y: 0, z: 3 }, diameter: 0.004, metal },
      ],
      feed: { wire: 1, at: 0.4 },
      loads: [],
    },
  };
}

export const described = (name: string, metal: WireMetal, segments?: number): WiresDescription => {
  const shape = shapes(metal)[name]!;
  const earthed = name.includes('to earth');
  return {
    kind: 'wires',
    shape,
    height: earthed ? 2.5 : 3,
    ground: earthed ? { kind: 'perfect' } : FREE,
    ...(segments === undefined ? {} : { segments }),
  };
};

export const NAMES = Object.keys(shapes('lossless'));
