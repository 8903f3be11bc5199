import { SPEED_OF_LIGHT } from '../../constants.ts';
import { term } from '../../figure.ts';
import { GivenError } from '../../given-error.ts';
import type { TerrainProfile } from '../description.ts';
import { EFFECTIVE_EARTH_RADIUS } from '../earth.ts';
import type { LinearPolarisation } from '../ground-reflection.ts';
import { knifeEdgeLoss } from '../knife-edge.ts';
import { nearness } from '../path.ts';
import { deltaBullington, type TerrainDiffraction } from '../terrain-diffraction.ts';
import {
  bothPolarisations,
  freeSpaceStep,
  groundPath,
  groundTerms,
  HORIZONTAL_SHARE,
  type MethodField,
  type Situation,
} from './method-field.ts';

const SOURCE = 'ITU-R P.526-15 sec. 4.5.2 (delta-Bullington)';

/** Terrain profile: hills as edges, and what the earth's bulge costs beyond them. */
export function terrainMethod(situation: Situation): MethodField {
  const { station, site, path } = situation;
  const profile = profileOf(situation);
  const wavelength = SPEED_OF_LIGHT / station.frequency;
  const end = profile.height.length - 1;
  const length = profile.distance[end]!;
  const diffraction = new Map<LinearPolarisation, TerrainDiffraction>();
  const { decibels, horizontalShare } = bothPolarisations(HORIZONTAL_SHARE[station.polarisation], (polarisation) => {
    const found = deltaBullington(profile, { ...groundPath(situation, polarisation), distance: length }, wavelength);
    diffraction.set(polarisation, found);
    return -found.loss;
  });
  const { actual, smooth, spherical, effectiveHeight1, effectiveHeight2 } = diffraction.get('vertical') ?? diffraction.get('horizontal')!;
  const remarks: string[] = [];
  if (end < 2) remarks.push('The terrain profile has no ground between its ends: it says no more than a smooth earth.');
  return {
    method: 'terrain',
    steps: [
      freeSpaceStep(situation),
      {
        name: 'edges',
        label: 'hills in the way',
        decibels: 0 - actual.loss,
        source: SOURCE,
        working: () => ({
          formula: 'L_ba = J + (1 - exp(-J/6))(10 + 0.02 d), J = 6.9 + 20 log10(sqrt((nu - 0.1)^2 + 1) + nu - 0.1)',
          terms: [
            term('nu', 'Fresnel parameter of the one edge that stands for all', actual.nu, '1'),
            term('J', 'loss of that edge', actual.edgeLoss, 'dB'),
            term('J_F', 'the same by the Fresnel integrals, for comparison', actual.nu === null ? null : knifeEdgeLoss(actual.nu), 'dB'),
            term('d', 'length of the profile', length, 'm'),
          ],
          source: SOURCE,
          holds: 'one profile in the plane of the path; no way around the hills, no reflections, no woods',
        }),
      },
      {
        name: 'bulge',
        label: "the earth's bulge beyond the hills",
        decibels: decibels + actual.loss,
        source: SOURCE,
        working: () => ({
          formula: '-max(L_sph - L_bs, 0)',
          terms: [
            term('L_sph', 'smooth earth with the effective heights', spherical, 'dB'),
            term('L_bs', 'edge that stands for that smooth earth', smooth.loss, 'dB'),
            term("h'1", 'effective height of the mast aerial', effectiveHeight1, 'm'),
            term("h'2", 'effective height of the receiving aerial', effectiveHeight2, 'm'),
            ...groundTerms(situation),
          ],
          source: SOURCE,
          holds: 'mixed polarisation shows the vertical half',
        }),
      },
    ],
    horizontalShare,
    elevation: arrival(profile, station.mastHeight, site.height),
    nearness: nearness(path.distance, station.mastHeight - site.height),
    remarks,
  };
}

/** The station's profile, once it is known to fit the path. */
function profileOf({ station, path, where }: Situation): TerrainProfile {
  const profile = station.terrain;
  if (!profile) {
    throw new GivenError('place.method', 'terrain', `${where} has no terrain profile`, 'Give one, or let the method be auto.');
  }
  const { distance, height } = profile;
  const at = `${where}.terrain`;
  if (distance.length !== height.length || distance.length < 2) {
    const given = `${distance.length} distances and ${height.length} heights`;
    throw new GivenError(at, given, 'each point needs both, and a profile needs two', 'Give a height for every distance.');
  }
  if (distance[0] !== 0)
    throw new GivenError(at, `starting at ${distance[0]} m`, 'a profile starts at the mast', 'Let the first distance be 0.');
  for (let i = 0; i < distance.length; i++) {
    if (!Number.isFinite(distance[i]!) || !Number.isFinite(height[i]!) || Math.abs(height[i]!) > 9000) {
      throw new GivenError(
        `${at}.height[${i}]`,
        `${height[i]} m at ${distance[i]} m`,
        'there is no such ground',
        'Give metres above sea level.',
      );
    }
    if (i > 0 && !(distance[i]! > distance[i - 1]!)) {
      throw new GivenError(
        `${at}.distance[${i}]`,
        `${distance[i]} m`,
        'distances must rise from the mast to the site',
        'Sort the profile.',
      );
    }
  }
  const length = distance[distance.length - 1]!;
  if (Math.abs(length - path.distance) > Math.max(100, 0.02 * path.distance)) {
    throw new GivenError(
      at,
      `${length} m long`,
      `the mast is ${path.distance.toFixed(0)} m away`,
      'Let the profile run from the foot of the mast to the site.',
    );
  }
  return profile;
}

/** Elevation of the ray that comes over the highest edge as the site sees it, or straight from the mast [rad]. */
function arrival({ distance, height }: TerrainProfile, mastHeight: number, siteHeight: number): number {
  const end = distance.length - 1;
  const length = distance[end]!;
  const eye = height[end]! + siteHeight;
  const curve = 1 / (2 * EFFECTIVE_EARTH_RADIUS);
  let slope = (height[0]! + mastHeight - eye) / length - length * curve;
  for (let i = 1; i < end; i++) {
    const away = length - distance[i]!;
    slope = Math.max(slope, (height[i]! - eye) / away - away * curve);
  }
  return Math.atan(slope);
}
