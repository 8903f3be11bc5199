import { term } from '../figure.ts';
import { buildingEntryLoss, ENTRY_LOSS_FROM, type EntryLoss } from './building-entry.ts';
import { checkSite, checkStation } from './check-place.ts';
import type { FieldMethod, Place, Station, UsedMethod } from './description.ts';
import { CAUTION_FROM, publicReferenceLevel, REFERENCE_LEVEL_SOURCE } from './exposure.ts';
import { fieldOfLevel } from './free-space.ts';
import { locationSpread } from './location-spread.ts';
import { broadcastCurvesMethod } from './methods/broadcast-curves-method.ts';
import { freeSpaceMethod } from './methods/free-space-method.ts';
import { groundWaveMethod } from './methods/ground-wave-method.ts';
import { measuredMethod } from './methods/measured.ts';
import type { MethodField, Situation, WorkedStep } from './methods/method-field.ts';
import { smoothEarthMethod } from './methods/smooth-earth-method.ts';
import { terrainMethod } from './methods/terrain-method.ts';
import { pathTo } from './path.ts';
import { externalNoise } from './radio-noise.ts';
import type { ReceivedField } from './received-field.ts';

/** Nearer than this the size and the beam of a VHF mast aerial matter [m]. */
const MAST_APERTURE = 100;

/**
 * Field of one station where the aerial stands.
 *
 * The method is the place's own choice, or by itself: measured, else terrain, else broadcast curves (ground wave below 30 MHz).
 *
 * @throws GivenError where a value cannot be, a profile is asked for and missing, or the site stands inside the mast's aerial
 */
export function receive(place: Place, station: Station): ReceivedField {
  checkSite(place.site);
  return receiveChecked(place, station);
}

/** Fields of all stations of a place, in their order. */
export function receiveAll(place: Place): readonly ReceivedField[] {
  checkSite(place.site);
  return place.stations.map((station) => receiveChecked(place, station));
}

function receiveChecked(place: Place, station: Station): ReceivedField {
  const { site } = place;
  const index = place.stations.indexOf(station);
  const where = index < 0 ? 'station' : `place.stations[${index}]`;
  checkStation(station, where);
  const path = pathTo(site, station, where);
  const situation: Situation = { site, station, path, where };
  const remarks: string[] = [];
  const found = byMethod(chooseMethod(place.method, station, remarks), situation);
  remarks.push(...found.remarks);
  if (path.slope < MAST_APERTURE && station.frequency >= 30e6) {
    remarks.push("This near, the length and the downward beam of the mast's aerial decide: the figure is an upper bound.");
  }
  const outdoors = sum(found.steps);
  const entry = entryOf(situation, found, remarks);
  const steps = entry ? [...found.steps, entryStep(situation, found, entry)] : found.steps;
  const field = fieldOfLevel(sum(steps));
  const location = locationSpread(found.method, station.frequency, found.nearness);
  const spread = Math.hypot(location.decibels, entry ? entry.spread : 0);
  const noise = externalNoise(site.radioNoise, station.frequency);
  if (station.frequency > 250e6 || station.frequency < 0.3e6) {
    remarks.push('The man-made noise is carried on beyond the 0.3 to 250 MHz it was surveyed in.');
  }
  const level = publicReferenceLevel(station.frequency);
  // near a mast clutter is no shelter to count on: the greater of the field outdoors and that of free space
  const ratio = fieldOfLevel(Math.max(outdoors, found.steps[0]!.decibels)) / level;
  return {
    station,
    distance: path.distance,
    bearing: path.bearing,
    elevation: found.elevation,
    method: found.method,
    field,
    horizontal: field * Math.sqrt(found.horizontalShare),
    vertical: field * Math.sqrt(1 - found.horizontalShare),
    spread,
    steps: steps.map(({ label, decibels, source }) => ({ label, decibels, source })),
    noiseFigure: noise.figure,
    exposure: { ratio, level, source: REFERENCE_LEVEL_SOURCE, caution: ratio > CAUTION_FROM },
    remarks,
    record: { situation, steps, horizontalShare: found.horizontalShare, location, entry, noise },
  };
}

const sum = (steps: readonly WorkedStep[]): number => steps.reduce((level, step) => level + step.decibels, 0);

/** The method in fact used; a remark says where the place's choice cannot serve the station's band. */
function chooseMethod(chosen: FieldMethod, station: Station, remarks: string[]): UsedMethod {
  if (station.measuredField !== undefined) return 'measured';
  const low = station.frequency < 30e6;
  if (chosen === 'auto') return low ? 'ground-wave' : station.terrain ? 'terrain' : 'broadcast-curves';
  if (low && chosen !== 'ground-wave' && chosen !== 'free-space') {
    remarks.push('Below 30 MHz the wave follows the ground: the ground-wave method is used instead of the one chosen.');
    return 'ground-wave';
  }
  if (!low && chosen === 'ground-wave') {
    remarks.push('From 30 MHz up the ground-wave method gives way to smooth earth with the heights of both aerials.');
    return 'smooth-earth';
  }
  return chosen;
}

function byMethod(method: UsedMethod, situation: Situation): MethodField {
  switch (method) {
    case 'measured':
      return measuredMethod(situation, situation.station.measuredField!);
    case 'free-space':
      return freeSpaceMethod(situation);
    case 'smooth-earth':
      return smoothEarthMethod(situation);
    case 'terrain':
      return terrainMethod(situation);
    case 'broadcast-curves':
      return broadcastCurvesMethod(situation);
    case 'ground-wave':
      return groundWaveMethod(situation);
  }
}

/** Loss into the building, unless the field was measured where the aerial stands. */
function entryOf({ site, station }: Situation, found: MethodField, remarks: string[]): EntryLoss | null {
  if (!site.building) return null;
  if (found.method === 'measured') {
    remarks.push('The field is taken as measured where the aerial stands: no wall is counted again.');
    return null;
  }
  if (station.frequency < ENTRY_LOSS_FROM)
    remarks.push('Entry into buildings is known from 80 MHz up: below, the loss at 80 MHz stands in, an estimate.');
  return buildingEntryLoss(site.building, station.frequency, found.elevation);
}

function entryStep({ site, station }: Situation, found: MethodField, entry: EntryLoss): WorkedStep {
  const building = site.building!;
  const source = 'ITU-R P.2109-2 Annex 1';
  return {
    name: 'buildingEntry',
    label: building.kind === 'traditional' ? 'into a traditional building' : 'into a thermally efficient building',
    decibels: -entry.loss,
    source,
    working: () => ({
      formula: '-10 log10(10^(A/10) + 10^(B/10) + 10^(-0.3))',
      terms: [
        term('P', 'share of rooms with no more loss', building.probability, '1'),
        term('z_P', 'normal deviate of that share', entry.deviate, '1'),
        term('f', 'carrier', station.frequency, 'Hz'),
        term('theta', 'elevation of the arriving wave', found.elevation, 'rad'),
      ],
      source,
      holds: '80 MHz to 100 GHz; median loss over all rooms of such buildings',
    }),
  };
}
