import { GivenError } from '../given-error.ts';
import type { Site, Station } from './description.ts';
import { EFFECTIVE_EARTH_RADIUS, horizonDistance } from './earth.ts';
import { greatCircle } from './great-circle.ts';

/** The way from the site to one mast. */
export interface Path {
  /** [m] along the ground */
  readonly distance: number;
  /** from the site to the mast [rad], clockwise from true north */
  readonly bearing: number;
  /** straight from aerial to aerial [m] */
  readonly slope: number;
  /** whether the earth's bulge hides the mast */
  readonly beyondHorizon: boolean;
  /** of the direct ray, or of the horizon where there is none [rad], with median refraction */
  readonly elevation: number;
}

/** Aerials nearer than this are in each other's metalwork [m]. */
const NEAREST = 1;
/** No method here reaches further [m]. */
const FURTHEST = 1e6;

/** Finds the path; `where` names the station in an error. */
export function pathTo(site: Site, station: Station, where: string): Path {
  const { distance, bearing } = distanceAndBearing(site, station, where);
  if (distance > FURTHEST) {
    throw new GivenError(
      `${where}.position`,
      `${(distance / 1e3).toFixed(0)} km away`,
      'no method here reaches beyond 1000 km',
      'Leave the station out.',
    );
  }
  const slope = Math.hypot(distance, station.mastHeight - site.height);
  if (slope < NEAREST) {
    throw new GivenError(
      `${where}.position`,
      `${slope.toPrecision(2)} m from the transmitting aerial`,
      'the site would be inside that aerial',
      'Give a distance to the foot of the mast, or the height of its aerial.',
    );
  }
  const beyondHorizon = distance >= horizonDistance(station.mastHeight, site.height);
  const elevation = beyondHorizon
    ? -Math.sqrt((2 * site.height) / EFFECTIVE_EARTH_RADIUS)
    : Math.atan2(station.mastHeight - site.height, distance) - distance / (2 * EFFECTIVE_EARTH_RADIUS);
  return { distance, bearing, slope, beyondHorizon, elevation };
}

function distanceAndBearing(site: Site, station: Station, where: string): { readonly distance: number; readonly bearing: number } {
  if ('distance' in station.position) return station.position;
  if (!site.coordinates) {
    throw new GivenError(
      'place.site.coordinates',
      'not given',
      `${where} is given by coordinates, so the site needs its own`,
      'Give the latitude and longitude of the site, or distance and bearing of the mast.',
    );
  }
  return greatCircle(site.coordinates, station.position.coordinates);
}

/**
 * How much of the curves' loss applies this near: 1 from 1 km on, 0 where the aerials are 40 m apart along the ground or nearer.
 *
 * w = log(s/s_40)/log(s_1000/s_40), s the straight distances for the same heights
 *
 * Source: ITU-R P.1546-6 Annex 5 section 15 (there an interpolation of levels; the loss against free space then interpolates likewise).
 */
export function nearness(distance: number, heightDifference: number): number {
  if (distance >= 1e3) return 1;
  const near = Math.hypot(40, heightDifference);
  const share = Math.log(Math.hypot(distance, heightDifference) / near) / Math.log(Math.hypot(1e3, heightDifference) / near);
  return Math.max(0, share);
}
