import { fresnelParameter, knifeEdgeApproximation } from './knife-edge.ts';
import { smoothEarthDiffraction } from './spherical-diffraction.ts';
import type { GroundPath } from './two-ray.ts';

/** Profile of the ground between two aerials: distances from the first [m] ascending from 0, heights above sea level [m]. */
export interface Profile {
  readonly distance: ArrayLike<number>;
  readonly height: ArrayLike<number>;
}

export interface BullingtonEdge {
  /** [dB] */
  readonly loss: number;
  /** loss of the equivalent edge alone [dB] */
  readonly edgeLoss: number;
  /** Fresnel parameter of the equivalent edge; null where there is no ground between the aerials */
  readonly nu: number | null;
}

/**
 * Diffraction over a profile by one equivalent edge.
 *
 * Beyond the horizon the edge stands where the steepest rays from both ends cross; within it at the point with the greatest nu.
 * L = J + [1 - exp(-J/6)](10 + 0.02 d), d in km.
 *
 * @param top1 - height of the first aerial above sea level [m], and `top2` of the other
 * @param radius - effective earth radius [m], infinite for no bulge
 * Source: ITU-R P.526-15 section 4.5.1, eqs 47-55.
 */
export function bullington(profile: Profile, top1: number, top2: number, wavelength: number, radius: number): BullingtonEdge {
  const last = profile.distance.length - 1;
  const d = profile.distance[last]!;
  const straight = (top2 - top1) / d;
  let steepest1 = Number.NEGATIVE_INFINITY;
  let steepest2 = Number.NEGATIVE_INFINITY;
  let nearest = Number.NEGATIVE_INFINITY;
  for (let i = 1; i < last; i++) {
    const d1 = profile.distance[i]!;
    const d2 = d - d1;
    const ground = profile.height[i]! + (d1 * d2) / (2 * radius);
    steepest1 = Math.max(steepest1, (ground - top1) / d1);
    steepest2 = Math.max(steepest2, (ground - top2) / d2);
    nearest = Math.max(nearest, (ground - (top1 * d2 + top2 * d1) / d) / Math.sqrt(d1 * d2));
  }
  if (last < 2) return { loss: 0, edgeLoss: 0, nu: null };
  let nu = nearest * Math.sqrt((2 * d) / wavelength);
  const both = steepest1 + steepest2;
  if (steepest1 > straight && both > 0) {
    // it lies between the outermost edges; rounding alone could throw it out when all but touches the line of sight
    const met = (top2 - top1 + steepest2 * d) / both;
    const crossing = Math.max(profile.distance[1]!, Math.min(profile.distance[last - 1]!, met));
    const height = top1 + steepest1 * crossing - (top1 * (d - crossing) + top2 * crossing) / d;
    nu = fresnelParameter(height, crossing, d - crossing, wavelength);
  }
  const edgeLoss = knifeEdgeApproximation(nu);
  return { loss: edgeLoss + (1 - Math.exp(-edgeLoss / 6)) * (10 + 2e-5 * d), edgeLoss, nu };
}

export interface TerrainDiffraction {
  /** [dB] */
  readonly loss: number;
  /** of the real profile, and of a smooth one with the same effective heights, both by Bullington's edge */
  readonly actual: BullingtonEdge;
  readonly smooth: BullingtonEdge;
  /** of the smooth earth with those heights [dB] */
  readonly spherical: number;
  /** heights of the aerials above the fitted smooth surface [m] */
  readonly effectiveHeight1: number;
  readonly effectiveHeight2: number;
}

/**
 * Diffraction over a profile: Bullington's edge for the hills, corrected by what a smooth earth would cost beyond its own Bullington's edge.
 *
 * L = L_ba + max(L_sph - L_bs, 0).
 *
 * @param path - heights of the aerials above the ground at their ends; its distance is that of the profile
 * Holds for: one profile in the plane of the path; sideways paths, reflections and woods are not in it.
 * Source: ITU-R P.526-15 section 4.5.2, eq. 56; effective heights by eqs 57-64.
 */
export function deltaBullington(profile: Profile, path: GroundPath, wavelength: number): TerrainDiffraction {
  const last = profile.distance.length - 1;
  const top1 = profile.height[0]! + path.height1;
  const top2 = profile.height[last]! + path.height2;
  const surface = smoothSurface(profile, top1, top2);
  const effectiveHeight1 = top1 - surface.start;
  const effectiveHeight2 = top2 - surface.end;
  const flat = { distance: profile.distance, height: new Float64Array(last + 1) };
  const actual = bullington(profile, top1, top2, wavelength, path.earthRadius);
  const smooth = bullington(flat, effectiveHeight1, effectiveHeight2, wavelength, path.earthRadius);
  const spherical = smoothEarthDiffraction({ ...path, height1: effectiveHeight1, height2: effectiveHeight2 });
  return { loss: actual.loss + Math.max(spherical - smooth.loss, 0), actual, smooth, spherical, effectiveHeight1, effectiveHeight2 };
}

/** Heights above sea level of the straight line that fits the ground best, at both ends, lowered where hills stand in the way. */
function smoothSurface(profile: Profile, top1: number, top2: number): { readonly start: number; readonly end: number } {
  const { distance, height } = profile;
  const last = distance.length - 1;
  const d = distance[last]!;
  let v1 = 0;
  let v2 = 0;
  for (let i = 1; i <= last; i++) {
    const a = distance[i - 1]!;
    const b = distance[i]!;
    v1 += (b - a) * (height[i]! + height[i - 1]!);
    v2 += (b - a) * (height[i]! * (2 * b + a) + height[i - 1]! * (b + 2 * a));
  }
  let start = (2 * v1 * d - v2) / (d * d);
  let end = (v2 - v1 * d) / (d * d);
  let obstruction = 0;
  let angle1 = 0;
  let angle2 = 0;
  for (let i = 1; i < last; i++) {
    const d1 = distance[i]!;
    const above = height[i]! - (top1 * (d - d1) + top2 * d1) / d;
    obstruction = Math.max(obstruction, above);
    angle1 = Math.max(angle1, above / d1);
    angle2 = Math.max(angle2, above / (d - d1));
  }
  if (obstruction > 0) {
    start -= (obstruction * angle1) / (angle1 + angle2);
    end -= (obstruction * angle2) / (angle1 + angle2);
  }
  return { start: Math.min(start, height[0]!), end: Math.min(end, height[last]!) };
}
