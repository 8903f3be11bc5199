import { writeForPeople } from '#units';
import { FM_FROM, isFm } from '../assemble/place.ts';
import type { PlaceForm, StationForm } from '../forms/place-form.ts';
import type { Path } from '../json/positions.ts';
import type { Report } from '../problem.ts';
import { faultsOfProfile } from './profile.ts';

/** Aerials nearer than this are in each other's metalwork [m]. */
const NEAREST = 1;
/** How far a profile's end may miss the site, whichever is more: survey steps [m], rounding. */
const MISS = { metres: 100, share: 0.02 };

/** Finds what cannot be together in a place. */
export function checkPlace(form: PlaceForm, report: Report): void {
  const names = new Map<string, number>();
  form.stations.forEach((station, i) => {
    const path = ['place', 'stations', i];
    const twin = names.get(station.name);
    if (twin !== undefined)
      report(
        [...path, 'name'],
        JSON.stringify(station.name),
        `station ${twin + 1} of the list has that name too`,
        'Give each its own name.',
      );
    else names.set(station.name, i);
    checkPosition(station, form, path, report);
    checkTransmission(station, path, report);
    checkTerrain(station, form, path, report);
  });
}

function checkPosition(s: StationForm, { site }: PlaceForm, path: Path, report: Report): void {
  if (s.coordinates) {
    if (s.distance !== undefined || s.bearing !== undefined)
      report([...path, 'coordinates'], 'coordinates', 'distance or bearing is given as well', 'Give distance and bearing, or coordinates.');
    if (!site.coordinates)
      report(
        ['place', 'site', 'coordinates'],
        'nothing',
        `the mast of ${JSON.stringify(s.name)} is given by coordinates, so the site needs its own`,
        'Give latitude and longitude of the site, or distance and bearing of the mast.',
      );
    return;
  }
  for (const key of ['distance', 'bearing'] as const)
    if (s[key] === undefined) {
      const example = key === 'distance' ? '"distance": "12 km"' : '"bearing": "NE"';
      report([...path, key], 'nothing', 'it is missing', `Write ${example}, or give coordinates of the mast and of the site.`);
    }
  if (s.distance !== undefined && Math.hypot(s.distance, (s.mastHeight ?? 0) - site.height) < NEAREST)
    report(
      [...path, 'distance'],
      writeForPeople(s.distance, 'length'),
      'the site would be inside the transmitting aerial',
      'Give the distance to the foot of the mast, and the height of its aerial.',
    );
}

function checkTransmission(s: StationForm, path: Path, report: Report): void {
  if (s.mastHeight === undefined && s.frequency >= FM_FROM)
    report(
      [...path, 'mastHeight'],
      'nothing',
      'it is missing, and the field depends on it from 30 MHz on',
      'Give the height of the transmitting aerial, such as "120 m".',
    );
  if (s.polarisation !== undefined && s.polarisation === 'horizontal' && s.frequency < FM_FROM)
    report(
      [...path, 'polarisation'],
      '"horizontal"',
      'below 30 MHz the power is that of a vertical mast, and the ground carries no horizontal wave',
      'Write "vertical".',
    );
  const fm = isFm(s);
  const foreign = fm ? (['depth'] as const) : (['deviation', 'preEmphasis', 'stereo'] as const);
  for (const key of foreign)
    if (s[key] !== undefined)
      report(
        [...path, key],
        String(s[key]),
        `the station sends ${fm ? 'fm' : 'am'}, which has none`,
        `Leave it out, or write "modulation": "${fm ? 'am' : 'fm'}".`,
      );
}

function checkTerrain(s: StationForm, place: PlaceForm, path: Path, report: Report): void {
  const { terrain } = s;
  if (!terrain) {
    if (place.method === 'terrain' && s.measuredField === undefined)
      report(
        [...path, 'terrain'],
        'nothing',
        'the method is terrain, and this station has no profile',
        'Give a profile, or let the method be auto.',
      );
    return;
  }
  if ('csv' in terrain) return;
  const points = 'points' in terrain ? terrain.points : null;
  const distance = points ? points.map((p) => p[0]) : (terrain as { distance: number[] }).distance;
  const height = points ? points.map((p) => p[1]) : (terrain as { height: number[] }).height;
  const faults = faultsOfProfile(distance, height);
  for (const { row, list, given, why, mend } of faults)
    report(points ? [...path, 'terrain', 'points', row, list === 'distance' ? 0 : 1] : [...path, 'terrain', list, row], given, why, mend);
  const end = distance.at(-1);
  if (faults.length === 0 && s.distance !== undefined && Math.abs(end! - s.distance) > Math.max(MISS.metres, MISS.share * s.distance))
    report(
      [...path, 'terrain'],
      `${writeForPeople(end!, 'length')} long`,
      `the mast is ${writeForPeople(s.distance, 'length')} away`,
      'Let the profile run from the foot of the mast to the site.',
    );
}
