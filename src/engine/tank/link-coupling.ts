import { coaxialRingMutual } from './coaxial-rings.ts';
import type { Winding } from './winding.ts';

/** A winding in its place on the common axis: `start` is the place of its end nearest minus infinity [m]. */
export interface PlacedWinding {
  readonly winding: Winding;
  readonly start: number;
}

/** Mutual inductance of two windings on one axis, turn by turn. */
export interface LinkCoupling {
  /** of the stretch a..b of the first [effective turns] with the whole second [H] */
  of(a: number, b: number): number;
  /** whether some turns had to be moved apart because they would lie in each other */
  readonly crowded: boolean;
}

/**
 * Couples two windings on one axis by the rings they are made of.
 *
 * M(a..b) = sum_ij w_i w_j M_ring(r1, r2, z_i - z_j), w the part of ring i that lies in the stretch
 *
 * Rings closer than their wires allow are held at touching distance: such a link is wound between the turns of the coil.
 *
 * Source: Maxwell's mutual inductance (coaxial-rings.ts), summed.
 */
export function linkCoupling(first: PlacedWinding, second: PlacedWinding): LinkCoupling {
  const nearest = first.winding.wireRadius + second.winding.wireRadius;
  const across = first.winding.radius - second.winding.radius;
  const least = Math.sqrt(Math.max(0, nearest * nearest - across * across));
  let crowded = false;
  const perTurn = new Float64Array(Math.ceil(first.winding.effectiveTurns));
  for (let i = 0; i < perTurn.length; i++) {
    const zi = first.start + (i + 0.5) * first.winding.shape.pitch;
    for (let j = 0; j < second.winding.effectiveTurns; j++) {
      const zj = second.start + (j + 0.5) * second.winding.shape.pitch;
      const z = Math.abs(zi - zj);
      if (z < least * (1 - 1e-6)) crowded = true;
      const part = Math.min(1, second.winding.effectiveTurns - j);
      perTurn[i] = perTurn[i]! + part * coaxialRingMutual(first.winding.radius, second.winding.radius, Math.max(z, least));
    }
  }
  const of = (a: number, b: number): number => {
    let sum = 0;
    for (let i = Math.floor(a); i < Math.min(b, perTurn.length); i++) sum += (Math.min(b, i + 1) - Math.max(a, i)) * perTurn[i]!;
    return sum;
  };
  return { of, crowded };
}
