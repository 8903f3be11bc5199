import { SPEED_OF_LIGHT } from '../constants.ts';
import { C, type Complex } from '../numeric/index.ts';
import { horizonDistance } from './earth.ts';
import { complexPermittivity, surfaceImpedance } from './ground-reflection.ts';
import { residueSeries } from './residue-series.ts';
import { curvedSurfaceWave, surfaceWave } from './surface-wave.ts';
import { type GroundPath, twoRay } from './two-ray.ts';

/** Grazing angle, in units of (2/(k a))^(1/3), from which on rays alone are used; they begin to be mixed in at 0.6 of it. */
const RAYS_ONLY = 2.5;
const RAYS_FROM = 0.6;
/** The modes of a lit path cancel to exp(-0.87 x psi^2): past this x psi^2 too few of a double's figures are left. */
const CANCELLATION = 26;
/** Normalised distance over which the residue series takes over from the slightly curved plane. */
const MODES_FROM = 0.25;
const MODES_ONLY = 0.35;

/** Path in Fock's units. */
export interface NormalisedPath {
  /** (k a/2)^(1/3) d/a */
  readonly x: number;
  /** heights, k h/(k a/2)^(1/3) */
  readonly y1: number;
  readonly y2: number;
  /** j (k a/2)^(1/3) Delta, exp(-j w t) */
  readonly q: Complex;
  /** (k a/2)^(1/3) */
  readonly scale: number;
}

export interface SmoothEarthField {
  /** 20 log10 of field over free-space field [dB] */
  readonly decibels: number;
  /** what carried it: rays, the slightly curved plane, or modes around the bulge; two where the place lies in the join */
  readonly by: string;
  /** share of the ray solution, 0 to 1 */
  readonly rays: number;
}

/** The path in Fock's units. Source: V. A. Fock (1965) ch. 10. */
export function normalise(path: GroundPath): NormalisedPath {
  const k = (2 * Math.PI * path.frequency) / SPEED_OF_LIGHT;
  const scale = Math.cbrt((k * path.earthRadius) / 2);
  // at grazing; conjugate, as Fock's time factor is exp(-j w t)
  const impedance = C.conj(surfaceImpedance(complexPermittivity(path.ground, path.frequency), 0, path.polarisation));
  return {
    x: (scale * path.distance) / path.earthRadius,
    y1: (k * path.height1) / scale,
    y2: (k * path.height2) / scale,
    q: C.scale(C.mul(C.J, impedance), scale),
    scale,
  };
}

/**
 * Field over a smooth spherical earth against the free-space field, at any distance and heights.
 *
 * Three solutions of the same problem, each where it is good, joined where two are: direct and reflected ray (grazing angle above
 * 2 units of (2/(k a))^(1/3)); plane-earth rays and surface wave with two terms of curvature (normalised distance below 0.3); the full
 * residue series (beyond). Over the joins the levels in dB are mixed by a smooth step; there the two agree within 0.3 dB.
 *
 * Holds for: a smooth, uniform earth and the median atmosphere (effective radius); no clouds of ducts, no troposcatter (which rules beyond
 * some 50 dB under free space).
 * Source: ITU-R P.526-15 section 3 (residue series); Kerr 1951 sec. 2.13 (rays); Wait 1956 (curvature).
 */
export function smoothEarthField(path: GroundPath): SmoothEarthField {
  const beyond = path.distance >= horizonDistance(path.height1, path.height2, path.earthRadius);
  const rays = beyond ? null : twoRay(path);
  const unit = normalise(path);
  const raysOnly = Math.min(RAYS_ONLY, Math.sqrt(CANCELLATION / unit.x));
  const rayShare = rays ? smoothStep(((rays.grazing * unit.scale) / raysOnly - RAYS_FROM) / (1 - RAYS_FROM)) : 0;
  let decibels = rays && rayShare > 0 ? rayShare * level(C.abs(rays.factor)) : 0;
  let by = rayShare > 0 ? 'direct and reflected ray' : '';
  if (rayShare < 1) {
    const low = modesAndPlane(path, unit);
    decibels += (1 - rayShare) * low.decibels;
    by = by ? `${by}, joined to ${low.by}` : low.by;
  }
  return { decibels, by, rays: rayShare };
}

/** Near grazing and beyond: slightly curved plane near by, residue series far off. */
function modesAndPlane(path: GroundPath, unit: NormalisedPath): { readonly decibels: number; readonly by: string } {
  const modeShare = smoothStep((unit.x - MODES_FROM) / (MODES_ONLY - MODES_FROM));
  const far = modeShare > 0 ? level(2 * residueSeries(unit.x, unit.q, unit.y1, unit.y2)) : 0;
  const near = modeShare < 1 ? slightlyCurved(path, unit) : 0;
  return {
    decibels: modeShare * far + (1 - modeShare) * near,
    by: modeShare === 1 ? 'residue series' : modeShare === 0 ? 'plane earth, slightly curved' : 'plane earth joined to residue series',
  };
}

/** Rays and surface wave over plane earth, times what curvature does to the surface wave at the ground. */
function slightlyCurved(path: GroundPath, unit: NormalisedPath): number {
  const plane = twoRay({ ...path, earthRadius: Number.POSITIVE_INFINITY })!;
  return level(C.abs(plane.factor)) + curvatureLoss(unit);
}

/** What the earth's curvature does to the ground wave, against plane earth [dB]; normalised distance up to 0.35. */
export function curvatureLoss(unit: NormalisedPath): number {
  // p = -j (k d/2) Delta^2 = j x q^2 in exp(+j w t), q conjugate to Fock's
  const q = C.conj(unit.q);
  const p = C.mul({ re: 0, im: unit.x }, C.mul(q, q));
  return level(C.abs(curvedSurfaceWave(p, q)) / C.abs(surfaceWave(p)));
}

/** 3t^2 - 2t^3, held to 0 and 1 outside. */
function smoothStep(t: number): number {
  const s = Math.max(0, Math.min(1, t));
  return s * s * (3 - 2 * s);
}

const level = (ratio: number): number => 20 * Math.log10(ratio);
