import type { Term, Working } from '../../figure.ts';
import { term } from '../../figure.ts';
import type { Site, Station, UsedMethod } from '../description.ts';
import { EFFECTIVE_EARTH_RADIUS } from '../earth.ts';
import type { FieldStep } from '../field-step.ts';
import { fieldLevel, freeSpaceField, referenceDirectivity } from '../free-space.ts';
import type { LinearPolarisation } from '../ground-reflection.ts';
import type { Path } from '../path.ts';
import type { GroundPath } from '../two-ray.ts';

/** A step that can say how it came about. */
export interface WorkedStep extends FieldStep {
  /** last part of its figure's name */
  readonly name: string;
  readonly working: () => Working;
}

/** What every method is given. */
export interface Situation {
  readonly site: Site;
  readonly station: Station;
  readonly path: Path;
  /** where the station stands in the description */
  readonly where: string;
}

/** What every method answers. */
export interface MethodField {
  readonly method: UsedMethod;
  readonly steps: readonly WorkedStep[];
  /** share of the power that arrives horizontally polarised, 0 to 1 */
  readonly horizontalShare: number;
  /** of the arriving wave [rad] */
  readonly elevation: number;
  /** 1 from 1 km on, towards 0 next to the mast */
  readonly nearness: number;
  readonly remarks: readonly string[];
}

/** Share of the radiated power in the horizontal plane of polarisation. */
export const HORIZONTAL_SHARE: Readonly<Record<Station['polarisation'], number>> = { horizontal: 1, mixed: 0.5, vertical: 0 };

/** First step of every method: the field were there nothing but the two aerials. */
export function freeSpaceStep({ station, path }: Situation): WorkedStep {
  const field = freeSpaceField(station.power, referenceDirectivity(station.frequency), path.slope);
  const source = 'ITU-R P.525-4 eq. 1';
  return {
    name: 'freeSpace',
    label: 'free space',
    decibels: fieldLevel(field),
    source,
    working: () => ({
      formula: 'E0 = 20 log10(1e6 sqrt(eta0 D P / (4 pi)) / r)',
      terms: [
        term('P', 'radiated power', station.power, 'W'),
        term('D', 'directivity of the reference aerial', referenceDirectivity(station.frequency), '1'),
        term('r', 'straight distance from aerial to aerial', path.slope, 'm'),
      ],
      source,
      holds: "main beam of the mast's aerial, far field",
    }),
  };
}

/** The two ends as the smooth-earth formulas take them. */
export function groundPath({ site, station, path }: Situation, polarisation: LinearPolarisation): GroundPath {
  return {
    distance: path.distance,
    height1: station.mastHeight,
    height2: site.height,
    frequency: station.frequency,
    ground: site.ground,
    polarisation,
    earthRadius: EFFECTIVE_EARTH_RADIUS,
  };
}

/** Terms that every smooth-earth working shows. */
export function groundTerms({ site, station, path }: Situation): readonly Term[] {
  return [
    term('d', 'distance along the ground', path.distance, 'm'),
    term('h1', 'height of the mast aerial', station.mastHeight, 'm'),
    term('h2', 'height of the receiving aerial', site.height, 'm'),
    term('f', 'carrier', station.frequency, 'Hz'),
    term('eps_r', 'relative permittivity of the ground', site.ground.permittivity, '1'),
    term('sigma', 'conductivity of the ground', site.ground.conductivity, 'S/m'),
    term('a', 'effective earth radius', EFFECTIVE_EARTH_RADIUS, 'm'),
  ];
}

/** One level for both planes of polarisation, weighed by the station's power in each, and how much of what arrives is horizontal. */
export function bothPolarisations(
  horizontalShare: number,
  level: (polarisation: LinearPolarisation) => number,
): { readonly decibels: number; readonly horizontalShare: number } {
  if (horizontalShare === 1) return { decibels: level('horizontal'), horizontalShare };
  if (horizontalShare === 0) return { decibels: level('vertical'), horizontalShare };
  const horizontal = level('horizontal') + 10 * Math.log10(horizontalShare);
  const vertical = level('vertical') + 10 * Math.log10(1 - horizontalShare);
  // of the two in power, kept in dB so that a very weak one does not vanish
  const high = Math.max(horizontal, vertical);
  const decibels = high + 10 * Math.log10(10 ** ((horizontal - high) / 10) + 10 ** ((vertical - high) / 10));
  return { decibels, horizontalShare: 10 ** ((horizontal - decibels) / 10) };
}
