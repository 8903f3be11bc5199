import { SPEED_OF_LIGHT } from '../../constants.ts';
import type { Converged } from './convergence.ts';
import { GROUND_FREE_HEIGHT } from './ground-reflection.ts';
import { closest, dot, minus, norm, times } from './point.ts';
import type { WireStructure } from './structure.ts';

/** Estimated error of the impedance by the cutting above which it is said aloud. */
const POORLY_CUT = 0.15;
/** Parallel wires nearer than this many of their mean diameters crowd each other's current. */
const CROWDED = 3;
/** Below this many wavelengths to a segment the digits of the radiation resistance are used up. */
const TOO_SMALL = 1e-5;

/** Why the figures at a frequency may not be trusted; empty where they may. */
export function wireRemarks(structure: WireStructure, cut: Converged, frequency: number): readonly string[] {
  const wavelength = SPEED_OF_LIGHT / frequency;
  const remarks: string[] = [];
  const { mesh } = cut.discretised;
  if (cut.estimatedError !== null && cut.estimatedError > POORLY_CUT)
    remarks.push(
      `the impedance still moves by some ${Math.round(100 * cut.estimatedError)} % with finer segments: near a sharp resonance, read it as a shift of tuning`,
    );
  let thickest = 0;
  let shortest = Number.POSITIVE_INFINITY;
  for (let s = 0; s < mesh.segments; s++) {
    thickest = Math.max(thickest, mesh.radius[s]! / wavelength);
    shortest = Math.min(shortest, mesh.length[s]! / mesh.radius[s]!);
  }
  if (thickest > 0.01) remarks.push('a wire is thicker than 2 % of the wavelength: the current no longer flows evenly round it');
  if (shortest < 2) remarks.push('a piece of wire is hardly longer than it is thick: the joint there is only roughly right');
  const near = closestParallel(structure);
  if (near < CROWDED)
    remarks.push(
      `two parallel wires are only ${near.toPrecision(2)} diameters apart: their currents crowd together, and loss and spacing count for more`,
    );
  if (Math.max(...mesh.length) < TOO_SMALL * wavelength)
    remarks.push(
      'the aerial is so small against the wavelength that its radiation resistance has few digits left; take reactance and loss only',
    );
  const low = Math.min(...structure.wires.flatMap((w) => [w.from.z, w.to.z]));
  if (structure.ground.kind === 'real' && low < GROUND_FREE_HEIGHT * wavelength)
    remarks.push(
      `the lowest wire is ${low.toPrecision(2)} m above real ground, less than ${GROUND_FREE_HEIGHT} wavelength: the impedance is that of free space and may be some ohms off`,
    );
  return remarks;
}

/** Least distance of two parallel wires that run beside each other, in their mean diameters. */
function closestParallel({ wires }: WireStructure): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < wires.length; i++)
    for (let j = 0; j < i; j++) {
      const a = wires[i]!;
      const b = wires[j]!;
      const u = minus(a.to, a.from);
      const v = minus(b.to, b.from);
      if (Math.abs(dot(u, v)) < 0.99 * norm(u) * norm(v)) continue;
      const { distance } = closest(a.from, a.to, b.from, b.to);
      const w = minus(b.from, a.from);
      const across = norm(minus(w, times(u, dot(w, u) / dot(u, u))));
      // pieces of one line, and pairs whose nearest points are ends further apart than the lines, do not run beside each other
      if (across < a.diameter / 2 || distance > 1.01 * across) continue;
      least = Math.min(least, distance / ((a.diameter + b.diameter) / 2));
    }
  return least;
}
