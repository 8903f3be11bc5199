import { fresnelParameter, GivenError, SPEED_OF_LIGHT, type TerrainProfile } from '#engine';

/** The ground between a mast and a listener. */
export interface ProfilePath {
  /** heights as the wave meets them, the bulge of the earth put on (overBulge of the engine); from the mast (0) to the site */
  readonly profile: TerrainProfile;
  /** of both aerials above the ground there [m] */
  readonly mastHeight: number;
  readonly siteHeight: number;
  /** [Hz] */
  readonly frequency: number;
}

/** What decides whether the wave gets through. */
export interface ProfileFacts {
  /** of the whole path [m] */
  readonly length: number;
  readonly wavelength: number;
  /** height of the straight ray at a distance from the mast [m] */
  ray(distance: number): number;
  /** radius of the first Fresnel zone there [m]. Source: ITU-R P.526-15 eq. 2 with n = 1 */
  zone(distance: number): number;
  /** where the ground comes nearest to the ray, by Fresnel zones; null where there is no ground between */
  readonly worst: {
    readonly distance: number;
    readonly height: number;
    /** ground over the ray [m], negative below it */
    readonly over: number;
    /** Fresnel parameter of an edge there; -0.78 and less costs nothing */
    readonly nu: number;
  } | null;
}

export function profileFacts({ profile, mastHeight, siteHeight, frequency }: ProfilePath): ProfileFacts {
  const { distance, height } = profile;
  const length = distance.at(-1)!;
  const wavelength = SPEED_OF_LIGHT / frequency;
  const [from, to] = [height[0]! + mastHeight, height.at(-1)! + siteHeight];
  const ray = (d: number) => from + ((to - from) * d) / length;
  const zone = (d: number) => Math.sqrt(Math.max(0, (wavelength * d * (length - d)) / length));
  let worst: ProfileFacts['worst'] = null;
  for (let i = 1; i + 1 < distance.length; i++) {
    const d = distance[i]!;
    const over = height[i]! - ray(d);
    const nu = fresnelParameter(over, d, length - d, wavelength);
    if (worst === null || nu > worst.nu) worst = { distance: d, height: height[i]!, over, nu };
  }
  return { length, wavelength, ray, zone, worst };
}

export function checkProfile({ profile, mastHeight, siteHeight, frequency }: ProfilePath): void {
  const { distance, height } = profile;
  if (distance.length < 2 || distance.length !== height.length)
    throw new GivenError(
      'path.profile',
      `${distance.length} distances and ${height.length} heights`,
      'a profile goes from the mast to the site',
      'Give two points or more, each with its height.',
    );
  distance.forEach((d, i) => {
    if (!(i === 0 ? d === 0 : d > distance[i - 1]!) || !(d < 1e8))
      throw new GivenError(
        `path.profile.distance[${i}]`,
        `${d} m`,
        'distances ascend from 0',
        'Sort the points from the mast to the site.',
      );
    if (!(Math.abs(height[i]!) < 1e7))
      throw new GivenError(`path.profile.height[${i}]`, `${height[i]} m`, 'it is no height', 'Give metres.');
  });
  const given = [
    ['mastHeight', mastHeight, 'm'],
    ['siteHeight', siteHeight, 'm'],
    ['frequency', frequency, 'Hz'],
  ] as const;
  for (const [key, value, unit] of given)
    if (!(value >= (key === 'frequency' ? 1e3 : 0) && value < 1e12))
      throw new GivenError(`path.${key}`, `${value} ${unit}`, 'it cannot be', 'Give a height above the ground, or a frequency in Hz.');
}
