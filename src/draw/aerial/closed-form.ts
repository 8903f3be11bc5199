import {
  type AerialDescription,
  type Metal,
  type WireMetal,
  type WireShape,
  type WireStructure,
  type WiresDescription,
  wireStructure,
} from '#engine';
import { type CoilDrawingOptions, drawFrame } from '../coil/draw-coil.ts';
import type { Body } from './content.ts';
import { drawDescribedAerial } from './described.ts';
import { type AerialDrawingOptions, drawAerial } from './draw-aerial.ts';
import { lengthText } from './length-text.ts';

type ClosedForm = Exclude<AerialDescription, WiresDescription>;
type Whip = Extract<AerialDescription, { kind: 'whip' }>;

/** Wires of an aerial that is computed by a formula, as drawn. */
interface Shown {
  readonly title: string;
  readonly structure: WireStructure;
  readonly bodies?: readonly Body[];
  readonly note?: string;
}

/**
 * Any aerial to scale, as SVG text: from its wires, from the sizes its formula takes, or as a wound frame.
 *
 * @returns null for an aerial without a shape of its own: given by its impedance, or the tank's coil
 * @throws GivenError where its wires cannot be, or an option
 */
export function drawAnyAerial(aerial: AerialDescription, options: AerialDrawingOptions & CoilDrawingOptions = {}): string | null {
  if (aerial.kind === 'wires') return drawDescribedAerial(aerial, options);
  if (aerial.kind === 'loop') return drawFrame(aerial, options);
  const shown = shownAs(aerial);
  if (!shown) return null;
  const { structure, title, bodies = [], note } = shown;
  return drawAerial(structure, { title, bodies, ...(note === undefined ? {} : { note }), ...options });
}

const FREE = { kind: 'free-space' } as const;
const PLANE = { kind: 'perfect' } as const;
const at = (x: number, z: number) => ({ x, y: 0, z });

function shownAs(aerial: ClosedForm): Shown | null {
  switch (aerial.kind) {
    case 'dipole': {
      const { length, diameter, metal, orientation } = aerial;
      return {
        title: 'Dipole',
        structure: structureOf(
          { kind: 'dipole', length, diameter, metal, orientation, includedAngle: Math.PI, bend: 'forward', slope: 0 },
          0,
          FREE,
        ),
      };
    }
    case 'whip':
      return whip(aerial);
    case 'wire-to-earth': {
      const { horizontal, vertical, diameter } = aerial;
      // a wire lying on the ground has no side to be seen from
      if (vertical <= diameter) return null;
      const copper = { diameter, metal: 'copper' } as const;
      const level = horizontal > diameter ? [{ from: at(0, vertical), to: at(horizontal, vertical), ...copper }] : [];
      return {
        title: 'Wire to earth',
        structure: {
          wires: [{ from: at(0, 0), to: at(0, vertical), ...copper }, ...level],
          feed: { wire: 0, at: 0 },
          loads: [],
          ground: PLANE,
        },
        note: 'The level part may run any way; the set is between the foot of the wire and the earth rod.',
      };
    }
    case 'loop':
    case 'electrical':
    case 'coil':
      return null;
  }
}

function whip({ length, diameter, metal, counterpoise: c }: Whip): Shown {
  const rod = { rod: { length, diameter, metal }, lean: { angle: 0, bearing: 0 } };
  const shape = (against: Extract<WireShape, { kind: 'rod' }>['against']): WireShape => ({ kind: 'rod', ...rod, against });
  const copper: Metal = 'copper';
  switch (c.kind) {
    case 'plane':
      return {
        title: 'Rod on a plane',
        structure: foot({ length, diameter, metal }, []),
        note: 'The ground here is the plane of metal that the rod stands on.',
      };
    case 'drop-wire':
      return {
        title: 'Rod with a drop wire',
        structure: structureOf(shape({ kind: 'drop-wire', length: c.length, diameter: c.diameter, metal: copper }), 0, FREE),
      };
    case 'earth-wire':
      return {
        title: 'Rod with a wire to earth',
        structure: structureOf(
          shape({ kind: 'earth-wire', length: c.length, diameter: c.diameter, metal: copper, earthResistance: c.earthResistance }),
          c.length,
          PLANE,
        ),
      };
    case 'set':
      return {
        title: 'Rod on the set',
        structure: foot({ length, diameter, metal }, [c.size]),
        bodies: [{ wires: [1], label: `the set, ${lengthText(c.size)} at its largest` }],
      };
  }
}

/** A rod from the feed up, on a plane; or on the set, drawn as a line of its largest size. */
function foot(
  rod: { readonly length: number; readonly diameter: number; readonly metal: WireMetal },
  below: readonly number[],
): WireStructure {
  const { diameter, metal } = rod;
  return {
    wires: [
      { from: at(0, 0), to: at(0, rod.length), diameter, metal },
      ...below.map((size) => ({ from: at(0, 0), to: at(0, -size), diameter: Math.min(diameter, size / 4), metal })),
    ],
    feed: { wire: 0, at: 0 },
    loads: [],
    ground: below.length > 0 ? FREE : PLANE,
  };
}

const structureOf = (shape: WireShape, height: number, ground: WiresDescription['ground']): WireStructure =>
  wireStructure({ kind: 'wires', shape, height, ground });
