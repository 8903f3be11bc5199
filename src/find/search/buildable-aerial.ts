import type { AerialDescription, Coupling, WireShape } from '#engine';
import type { Drawer } from '#set-file';
import { shelfIn } from './stock.ts';

/** Lengths that differ by less are one and the same [m]. */
export const HAIR = 1e-9;
export const same = (a: number, b: number): boolean => Math.abs(a - b) <= HAIR;

/**
 * What is missing for the aerial, once the coil has its wire; empty where nothing is.
 *
 * @param wound - wire in the coil and round it [m]
 */
export function aerialNeeds(
  aerial: AerialDescription,
  drawer: Drawer,
  wound: number,
  coil: { readonly wireDiameter: number; readonly metal: string },
  coupling: Coupling | undefined,
): string[] {
  const shelf = shelfIn(drawer).wires;
  const wire: Wire = (length, diameter, metal) => {
    // coil and aerial off one reel or off two, as it works out
    const reels = Object.entries(shelf).map(([name, w]) => ({
      ...w,
      left: (drawer.wires[name]?.length ?? Number.POSITIVE_INFINITY) + HAIR,
    }));
    const ofCoil = reels.filter((r) => same(r.wireDiameter, coil.wireDiameter) && r.metal === coil.metal);
    const enough = reels
      .filter((r) => same(r.wireDiameter, diameter) && (metal === undefined || r.metal === metal) && length <= r.left)
      .some((r) => ofCoil.some((c) => (c === r ? wound + length : wound) <= c.left));
    return enough ? [] : [`no ${length.toFixed(2)} m of such wire for the aerial`];
  };
  if ((aerial.kind === 'coil') !== (coupling === undefined)) return ['the aerial must join the coil, unless the coil is the aerial'];
  if (aerial.kind === 'coil') return [];
  if (aerial.kind === 'wire-to-earth') {
    const { garden } = drawer;
    if (!garden) return ['there is no garden for a wire'];
    const fits = aerial.horizontal <= garden.length && aerial.vertical <= garden.height;
    return [...(fits ? [] : ['the wire does not fit the garden']), ...wire(aerial.horizontal + aerial.vertical, aerial.diameter)];
  }
  if (aerial.kind !== 'wires') return ['no such aerial can be made of the drawer'];
  return shapeNeeds(aerial.shape, aerial.height, drawer.rods, wire);
}

type Wire = (length: number, diameter: number, metal?: string) => string[];
type Rods = Drawer['rods'];

/** Whether one kind of rod does for all straight pieces, each given by the lengths it may be put together of: one, or several to choose from. */
function cutOf(rods: Rods, diameter: number, metal: string, wanted: readonly (readonly (readonly number[])[])[]): boolean {
  return rods.some((r) => {
    if (!same(r.diameter, diameter) || r.metal !== metal) return false;
    const used = wanted.map((ways) =>
      Math.min(...ways.map((w) => (w.every((l) => l <= r.length + HAIR) ? w.length : Number.POSITIVE_INFINITY))),
    );
    return used.reduce((a, b) => a + b, 0) <= r.count;
  });
}

/** Whole, or of two halves. */
const element = (length: number): readonly (readonly number[])[] => [[length], [length / 2, length / 2]];

function shapeNeeds(shape: WireShape, height: number, rods: Rods, wire: Wire): string[] {
  switch (shape.kind) {
    case 'dipole': {
      const half = shape.length / 2;
      if (half * Math.cos(shape.includedAngle / 2) > height) return ['the tips would lie on the ground'];
      if (cutOf(rods, shape.diameter, shape.metal, [[[half, half]]])) return [];
      return wire(shape.length, shape.diameter, shape.metal);
    }
    case 'folded-dipole': {
      const { length, spacing, diameter, metal } = shape;
      if (!same(shape.secondDiameter, diameter)) return ['both conductors are of one rod or wire'];
      // all round is one length of wire; of rods, two bent to a U, or four of which two are bent over at both ends
      const arm = length / 2 + spacing;
      if (
        cutOf(rods, diameter, metal, [
          [
            [length + spacing, length + spacing],
            [arm, arm, arm, arm],
          ],
        ])
      )
        return [];
      return wire(2 * length + 2 * spacing, diameter, metal);
    }
    case 'square-loop':
      return wire(4 * shape.side, shape.diameter, shape.metal);
    case 'round-loop': {
      if (shape.turns !== 1) return ['a loop of rod has one turn'];
      const round = Math.PI * shape.diameter;
      return cutOf(rods, shape.wireDiameter, shape.metal, [[[round]]]) ? [] : ['no rod to bend the loop of'];
    }
    case 'beam': {
      if (shape.driven.element.kind !== 'straight') return ['the driven element is a plain dipole'];
      const all = [shape.driven, ...(shape.reflector ? [shape.reflector] : []), ...shape.directors];
      const done = cutOf(
        rods,
        shape.diameter,
        shape.metal,
        all.map((e) => element(e.length)),
      );
      return done ? [] : ['not enough rods for the elements of the beam'];
    }
    case 'rod': {
      const { rod, against } = shape;
      const standing = cutOf(rods, rod.diameter, rod.metal, [[[rod.length]]]) ? [] : ['no such rod in the drawer'];
      if (against.kind === 'drop-wire')
        return [
          ...standing,
          ...(against.length <= height + HAIR ? [] : ['the drop wire would lie on the ground']),
          ...wire(against.length, against.diameter, against.metal),
        ];
      if (against.kind === 'radials')
        return [
          ...standing,
          ...(against.length * Math.sin(against.droop) <= height + HAIR ? [] : ['the radials would lie on the ground']),
          ...wire(against.count * against.length, against.diameter, against.metal),
        ];
      return ['no such counterpoise can be made of the drawer'];
    }
    case 'free-list':
      return ['no such aerial can be made of the drawer'];
  }
}
