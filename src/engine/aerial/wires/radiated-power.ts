import { ETA0, SPEED_OF_LIGHT } from '../../constants.ts';
import { C, gaussLegendre } from '../../numeric/index.ts';
import { farField } from './far-field.ts';
import { heat } from './loss-resistance.ts';
import type { Discretised, WireSolution } from './solve-wires.ts';

/**
 * Radiation resistance at the feed [ohm]: the power that leaves to the far field, by integration over the sphere, or over the upper
 * half where there is a ground.
 *
 * R = eta k^2/(16 pi^2) integral of |N|^2; Gauss's rule in the sine of the elevation, equal steps in azimuth, as many as the aerial's size
 * in wavelengths asks for.
 */
export function radiatedResistance(d: Discretised, s: WireSolution): number {
  const k = (2 * Math.PI * s.frequency) / SPEED_OF_LIGHT;
  const size = k * boundingRadius(d);
  const above = d.structure.ground.kind !== 'free-space';
  const { nodes, weights } = gaussLegendre(Math.ceil(1.5 * size) + 12);
  const steps = 2 * Math.ceil(1.2 * size) + 12;
  let sum = 0;
  for (let i = 0; i < nodes.length; i++) {
    const elevation = Math.asin(above ? (1 + nodes[i]!) / 2 : nodes[i]!);
    let ring = 0;
    for (let j = 0; j < steps; j++) {
      const n = farField(d, s, { azimuth: (2 * Math.PI * j) / steps, elevation });
      ring += C.abs2(n.horizontal) + C.abs2(n.vertical);
    }
    sum += weights[i]! * (above ? 1 / 2 : 1) * ((2 * Math.PI) / steps) * ring;
  }
  return (ETA0 * k * k * sum) / (16 * Math.PI * Math.PI);
}

function boundingRadius({ mesh: m, structure }: Discretised): number {
  let [x, y, z] = [0, 0, 0];
  for (let s = 0; s < m.segments; s++) {
    x += m.x[s]! / m.segments;
    y += m.y[s]! / m.segments;
    z += m.z[s]! / m.segments;
  }
  if (structure.ground.kind !== 'free-space') z = 0;
  let radius = 0;
  for (let s = 0; s < m.segments; s++) radius = Math.max(radius, Math.hypot(m.x[s]! - x, m.y[s]! - y, m.z[s]! - z) + m.length[s]!);
  return radius;
}

/** Loss resistance at the feed [ohm]: what heats wires and loads, by the square of the feed's current. */
export function lossResistance(d: Discretised, s: WireSolution): number {
  return heat(d, s.frequency, s.re, s.im) / C.abs2(s.admittance);
}
