import { ETA0, SPEED_OF_LIGHT } from '../../constants.ts';
import { C, gaussLegendre } from '../../numeric/index.ts';
import type { Arrival } from '../model.ts';
import { type Components, currentMoment } from './effective-length.ts';
import { groundReflection } from './ground-reflection.ts';
import { heat } from './loss-resistance.ts';
import type { Discretised, WireSolution } from './solve-wires.ts';

/** Gain over isotropic, of each component and of both together [dB]; null where nothing at all is radiated. */
export interface Gain {
  readonly total: number | null;
  readonly horizontal: number | null;
  readonly vertical: number | null;
}

const decibel = (power: number): number | null => (power > 0 ? 10 * Math.log10(power) : null);
const square = (c: Components) => ({ horizontal: C.abs2(c.horizontal), vertical: C.abs2(c.vertical) });

/**
 * Far field of the aerial and its ground, by the current into the feed [m]: the effective length, to which the ground's reflection is added.
 *
 * With a ground this is the pattern a distant station sees, for drawings and for comparison with tables. It is not what the chain takes: see
 * `currentMoment`. Nothing goes below the horizon where there is a ground.
 */
export function farField(d: Discretised, s: WireSolution, arrival: Arrival): Components {
  const moment = (a: Arrival): Components => {
    const n = currentMoment(d.mesh, d.feedPoint, s.frequency, s.re, s.im, a);
    return { horizontal: C.div(n.horizontal, s.admittance), vertical: C.div(n.vertical, s.admittance) };
  };
  const { ground } = d.structure;
  if (ground.kind === 'free-space') return moment(arrival);
  if (Math.sin(arrival.elevation) < 0) return { horizontal: C.ZERO, vertical: C.ZERO };
  const direct = moment(arrival);
  const below = moment({ azimuth: arrival.azimuth, elevation: -arrival.elevation });
  const k = (2 * Math.PI * s.frequency) / SPEED_OF_LIGHT;
  const delay = C.cis(-2 * k * d.feedPoint.z * Math.sin(arrival.elevation));
  const reflection = groundReflection(ground, s.frequency, arrival.elevation);
  const sum = (key: keyof Components) => C.add(direct[key], C.mul(C.mul(below[key], delay), reflection[key]));
  return { horizontal: sum('horizontal'), vertical: sum('vertical') };
}

/**
 * Gain with respect to the power into the feed.
 *
 * G = pi eta |N|^2 / (lambda^2 R), N the far field by the feed's current, R the terminal resistance.
 */
export function gain(d: Discretised, s: WireSolution, arrival: Arrival): Gain {
  const wavelength = SPEED_OF_LIGHT / s.frequency;
  const factor = (Math.PI * ETA0) / (wavelength ** 2 * C.inv(s.admittance).re);
  const n = square(farField(d, s, arrival));
  return {
    total: decibel(factor * (n.horizontal + n.vertical)),
    horizontal: decibel(factor * n.horizontal),
    vertical: decibel(factor * n.vertical),
  };
}

/**
 * Radiation resistance at the feed [ohm]: the power that leaves to the far field, by integration over the sphere, or over the upper
 * half where there is a ground.
 *
 * R = eta k^2/(16 pi^2) integral of |N|^2; Gauss's rule in the sine of the elevation, equal steps in azimuth, as many as the aerial's size
 * in wavelengths asks for.
 */
export function radiationResistance(d: Discretised, s: WireSolution): number {
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
      const n = square(farField(d, s, { azimuth: (2 * Math.PI * j) / steps, elevation }));
      ring += n.horizontal + n.vertical;
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

/** Part of the power into the feed that is not turned to heat in wires and loads; the ground's own loss is not in it. */
export function efficiency(d: Discretised, s: WireSolution): number {
  return 1 - lossResistance(d, s) / C.inv(s.admittance).re;
}

export interface PatternPoint {
  /** bearing [rad] in a cut round the compass, elevation in a cut over the top: 0 to pi, the far side beyond pi/2 */
  readonly angle: number;
  readonly gain: Gain;
}

/** Gain all round the compass at one elevation, from north clockwise. */
export function azimuthCut(d: Discretised, s: WireSolution, elevation: number, points: number): readonly PatternPoint[] {
  return Array.from({ length: points }, (_, i) => {
    const angle = (2 * Math.PI * i) / points;
    return { angle, gain: gain(d, s, { azimuth: angle, elevation }) };
  });
}

/** Gain in the upright plane through a bearing: all round, or over the top where there is a ground. */
export function elevationCut(d: Discretised, s: WireSolution, azimuth: number, points: number): readonly PatternPoint[] {
  const ground = d.structure.ground.kind !== 'free-space';
  return Array.from({ length: points }, (_, i) => {
    const angle = ground ? (Math.PI * i) / (points - 1) : (2 * Math.PI * i) / points;
    return { angle, gain: gain(d, s, onCircle(azimuth, angle)) };
  });
}

/** Direction at an angle along the upright circle through a bearing: 0 there, pi/2 overhead, pi behind. */
export function onCircle(azimuth: number, angle: number): Arrival {
  const elevation = Math.asin(Math.sin(angle));
  return { azimuth: Math.cos(angle) >= 0 ? azimuth : azimuth + Math.PI, elevation };
}

/** Gain forward less gain backward at the same elevation [dB]; null where one of them is nothing. */
export function frontToBack(d: Discretised, s: WireSolution, front: Arrival): number | null {
  const forward = gain(d, s, front).total;
  const backward = gain(d, s, { azimuth: front.azimuth + Math.PI, elevation: front.elevation }).total;
  return forward === null || backward === null ? null : forward - backward;
}

/** Direction of the greatest gain, on a grid of `step` [rad] refined by halving; the first of equals, from north clockwise and level upwards. */
export function strongestDirection(
  d: Discretised,
  s: WireSolution,
  step = Math.PI / 18,
): { readonly arrival: Arrival; readonly gain: Gain } {
  const at = (azimuth: number, elevation: number) => {
    const arrival = { azimuth, elevation };
    return { arrival, gain: gain(d, s, arrival) };
  };
  let best = at(0, 0);
  const consider = (azimuth: number, elevation: number) => {
    const next = at(azimuth, elevation);
    if ((next.gain.total ?? Number.NEGATIVE_INFINITY) > (best.gain.total ?? Number.NEGATIVE_INFINITY) + 1e-9) best = next;
  };
  const rows = Math.round(Math.PI / 2 / step);
  for (let i = 0; i <= rows; i++)
    for (const side of [1, -1])
      for (let j = 0; j < 4 * rows; j++) consider((2 * Math.PI * j) / (4 * rows), (side * Math.PI * i) / (2 * rows));
  for (let h = step / 2; h > 1e-3; h /= 2)
    for (const [da, de] of [
      [h, 0],
      [-h, 0],
      [0, h],
      [0, -h],
    ] as const)
      consider(best.arrival.azimuth + da, Math.max(-Math.PI / 2, Math.min(Math.PI / 2, best.arrival.elevation + de)));
  return best;
}

/** Current at the ends and the middle of each segment of each wire, by the feed's current, for drawing. */
export interface CurrentAt {
  readonly wire: number;
  /** [m] */
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly re: number;
  readonly im: number;
}

export function currents(d: Discretised, s: WireSolution): readonly CurrentAt[] {
  const { mesh: m } = d;
  const k = (2 * Math.PI * s.frequency) / SPEED_OF_LIGHT;
  const out: CurrentAt[] = [];
  for (let i = 0; i < m.segments; i++) {
    const half = (h: number) => {
      let v = C.ZERO;
      for (let at = m.rowStart[h]!; at < m.rowStart[h + 1]!; at++)
        v = C.add(v, C.scale({ re: s.re[m.column[at]!]!, im: s.im[m.column[at]!]! }, m.sign[at]!));
      return C.div(v, s.admittance);
    };
    const a = half(2 * i);
    const b = half(2 * i + 1);
    // sin k(d/2)/sin kd of each end's current in the middle
    const middle = C.scale(C.add(a, b), 1 / (2 * Math.cos((k * m.length[i]!) / 2)));
    [a, middle, b].forEach((v, j) => {
      const t = (j / 2) * m.length[i]!;
      out.push({
        wire: m.wire[i]!,
        x: m.x[i]! + t * m.tx[i]!,
        y: m.y[i]! + t * m.ty[i]!,
        z: m.z[i]! + t * m.tz[i]!,
        re: v.re,
        im: v.im,
      });
    });
  }
  return out;
}
