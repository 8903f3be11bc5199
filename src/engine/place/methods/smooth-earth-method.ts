import { nearness } from '../path.ts';
import { smoothEarthField } from '../smooth-earth.ts';
import {
  bothPolarisations,
  freeSpaceStep,
  groundPath,
  groundTerms,
  HORIZONTAL_SHARE,
  type MethodField,
  type Situation,
} from './method-field.ts';

/** From here down troposcatter, which is not in it, would carry more [dB against free space]. */
const TROPOSCATTER = -50;

/** Smooth spherical earth: reflection from the ground where the mast is seen, diffraction behind the bulge. */
export function smoothEarthMethod(situation: Situation): MethodField {
  const { station, site, path } = situation;
  let by = '';
  const { decibels, horizontalShare } = bothPolarisations(HORIZONTAL_SHARE[station.polarisation], (polarisation) => {
    const field = smoothEarthField(groundPath(situation, polarisation));
    by = field.by;
    return field.decibels;
  });
  const source = 'ITU-R P.526-15 sec. 3 (residue series); D. E. Kerr 1951 sec. 2.13 (two rays, divergence); J. R. Wait 1956 (curvature)';
  const remarks: string[] = [];
  if (decibels < TROPOSCATTER && path.beyondHorizon) {
    remarks.push('This far behind the horizon scatter from the troposphere, which is not counted, may carry more.');
  }
  return {
    method: 'smooth-earth',
    steps: [
      freeSpaceStep(situation),
      {
        name: 'smoothEarth',
        label: path.beyondHorizon ? 'diffraction around the smooth earth' : 'reflection from the smooth earth',
        decibels,
        source,
        working: () => ({
          formula: `20 log10 |E/E0| by ${by}`,
          terms: groundTerms(situation),
          source,
          holds: 'smooth, uniform earth; median refraction; no hills, houses or trees',
        }),
      },
    ],
    horizontalShare,
    elevation: path.elevation,
    nearness: nearness(path.distance, station.mastHeight - site.height),
    remarks,
  };
}
