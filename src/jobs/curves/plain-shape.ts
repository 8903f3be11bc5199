import type { SeparateAerial, SpacePoint } from '#engine';

/** An aerial as straight pieces of wire, x east, y north, z up [m]. */
export interface PlainShape {
  readonly wires: readonly { readonly from: SpacePoint; readonly to: SpacePoint }[];
  readonly feed: SpacePoint;
}

/** Pieces that stand for one turn of a loop, and the most turns that are told apart by eye. */
const PIECES = 24;
const MOST_TURNS = 8;
/** A metal plane is drawn as so many spokes. */
const SPOKES = 8;

/**
 * What an aerial that is computed in closed form looks like: for the eye alone, nothing is computed from it.
 *
 * @param height - of the site above ground: its middle, or the foot of a rod, is drawn there [m]
 * @returns null where the aerial is given by its values and nothing is known of its shape
 */
export function plainShape(aerial: Exclude<SeparateAerial, { readonly kind: 'wires' }>, height: number): PlainShape | null {
  const middle: SpacePoint = { x: 0, y: 0, z: height };
  switch (aerial.kind) {
    case 'electrical':
      return null;
    case 'dipole': {
      const { orientation, length } = aerial;
      const along = orientation.kind === 'vertical' ? UP : level(orientation.broadside + Math.PI / 2);
      return { wires: [{ from: step(middle, along, -length / 2), to: step(middle, along, length / 2) }], feed: middle };
    }
    case 'whip':
      return { wires: [{ from: middle, to: step(middle, UP, aerial.length) }, ...against(aerial, middle)], feed: middle };
    case 'loop': {
      const across = aerial.axis.kind === 'horizontal' ? UP : level(0);
      const beside = aerial.axis.kind === 'horizontal' ? level(aerial.axis.plane) : level(Math.PI / 2);
      const axis = aerial.axis.kind === 'horizontal' ? level(aerial.axis.plane + Math.PI / 2) : UP;
      const turns = Math.min(MOST_TURNS, aerial.turns);
      const pieces = Math.round(PIECES * turns);
      const length = turns > 1 ? aerial.windingLength : 0;
      const points = Array.from({ length: pieces + 1 }, (_, i) => {
        const angle = (2 * Math.PI * turns * i) / pieces;
        const r = aerial.diameter / 2;
        const round = step(step(middle, across, -r * Math.cos(angle)), beside, r * Math.sin(angle));
        return step(round, axis, length * (i / pieces - 0.5));
      });
      return { wires: points.slice(1).map((to, i) => ({ from: points[i]!, to })), feed: points[0]! };
    }
    case 'wire-to-earth': {
      const foot = { x: 0, y: 0, z: 0 };
      const top = step(foot, UP, aerial.vertical);
      const end = step(top, level(0), aerial.horizontal);
      return { wires: [{ from: foot, to: top }, ...(aerial.horizontal > 0 ? [{ from: top, to: end }] : [])], feed: foot };
    }
  }
}

/** What a rod works against, below it. */
function against(
  { counterpoise, length }: Extract<SeparateAerial, { readonly kind: 'whip' }>,
  foot: SpacePoint,
): readonly { readonly from: SpacePoint; readonly to: SpacePoint }[] {
  switch (counterpoise.kind) {
    case 'plane':
      return Array.from({ length: SPOKES }, (_, i) => ({ from: foot, to: step(foot, level((2 * Math.PI * i) / SPOKES), length) }));
    case 'set':
      return [{ from: foot, to: step(foot, UP, -counterpoise.size) }];
    case 'drop-wire':
    case 'earth-wire':
      return [{ from: foot, to: step(foot, UP, -counterpoise.length) }];
  }
}

const UP: SpacePoint = { x: 0, y: 0, z: 1 };
const level = (bearing: number): SpacePoint => ({ x: Math.sin(bearing), y: Math.cos(bearing), z: 0 });
const step = (p: SpacePoint, direction: SpacePoint, k: number): SpacePoint => ({
  x: p.x + k * direction.x,
  y: p.y + k * direction.y,
  z: p.z + k * direction.z,
});
