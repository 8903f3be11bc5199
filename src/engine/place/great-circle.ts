import type { Coordinates } from './description.ts';
import { EARTH_RADIUS } from './earth.ts';

/**
 * Distance and first bearing along the great circle from one point to another.
 *
 * sin^2(c/2) = sin^2(dphi/2) + cos phi1 cos phi2 sin^2(dlambda/2); d = R c;
 * bearing = atan2(sin dlambda cos phi2, cos phi1 sin phi2 - sin phi1 cos phi2 cos dlambda).
 *
 * @returns distance along the ground [m], bearing [rad] clockwise from true north, 0 to 2 pi; 0 where both are the same point
 * Holds for: a sphere of 6371 km, on which WGS 84 coordinates are read: within 0.6 % of the ellipsoid.
 * Source: haversine formula, e.g. R. W. Sinnott, Sky & Telescope 68 (1984) 159.
 */
export function greatCircle(from: Coordinates, to: Coordinates): { readonly distance: number; readonly bearing: number } {
  const dLatitude = to.latitude - from.latitude;
  const dLongitude = to.longitude - from.longitude;
  const h = Math.sin(dLatitude / 2) ** 2 + Math.cos(from.latitude) * Math.cos(to.latitude) * Math.sin(dLongitude / 2) ** 2;
  const bearing = Math.atan2(
    Math.sin(dLongitude) * Math.cos(to.latitude),
    Math.cos(from.latitude) * Math.sin(to.latitude) - Math.sin(from.latitude) * Math.cos(to.latitude) * Math.cos(dLongitude),
  );
  return {
    distance: 2 * EARTH_RADIUS * Math.asin(Math.min(1, Math.sqrt(h))),
    bearing: bearing < 0 ? bearing + 2 * Math.PI : bearing,
  };
}
