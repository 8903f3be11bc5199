import { GivenError } from '../given-error.ts';
import type { Coordinates, Site, Station } from './description.ts';

/** Refuses what cannot be: numbers that are none, heights below ground, ground that is air. */
export function checkSite(site: Site): void {
  within('place.site.height', site.height, 0, 1000, 'm', 'an aerial hangs above the ground, up to 1000 m');
  within('place.site.ground.permittivity', site.ground.permittivity, 2, 100, '', 'ground lies between dry sand (3) and water (80)');
  within('place.site.ground.conductivity', site.ground.conductivity, 0, 1e8, 'S/m', 'a conductivity is zero or more; sea water has 5');
  if (site.coordinates) checkCoordinates('place.site.coordinates', site.coordinates);
  if (site.building) {
    const { probability } = site.building;
    if (!(probability > 0 && probability < 1)) {
      throw new GivenError(
        'place.site.building.probability',
        String(probability),
        'no share of rooms is none or all of them',
        'Give a number between 0 and 1; 0.5 is the median room.',
      );
    }
  }
}

/** Refuses a station that no method here could carry. */
export function checkStation(station: Station, where: string): void {
  within(`${where}.frequency`, station.frequency, 100e3, 1e9, 'Hz', 'the methods here run from 100 kHz to 1 GHz');
  if (!(station.power > 0 && station.power <= 1e8)) {
    throw new GivenError(
      `${where}.power`,
      `${station.power} W`,
      'a station radiates more than nothing, and no more than 100 MW',
      'Give its radiated power.',
    );
  }
  within(`${where}.mastHeight`, station.mastHeight, 0, 3000, 'm', 'a mast aerial is on or above the ground, up to 3000 m');
  if (station.effectiveHeight !== undefined) {
    within(`${where}.effectiveHeight`, station.effectiveHeight, -1000, 3000, 'm', 'the curves know effective heights from -1000 to 3000 m');
  }
  if (station.measuredField !== undefined && !(station.measuredField > 0 && station.measuredField <= 1e4)) {
    const given = `${station.measuredField} V/m`;
    throw new GivenError(
      `${where}.measuredField`,
      given,
      'a measured field is more than nothing, and below 10 kV/m',
      'Leave it out if none was measured.',
    );
  }
  if ('distance' in station.position) {
    within(`${where}.position.distance`, station.position.distance, 0, 2.1e7, 'm', 'the earth is 20 000 km halfway around');
    finite(`${where}.position.bearing`, station.position.bearing, 'rad');
  } else {
    checkCoordinates(`${where}.position.coordinates`, station.position.coordinates);
  }
  if (station.frequency < 30e6 && station.polarisation === 'horizontal') {
    throw new GivenError(
      `${where}.polarisation`,
      'horizontal',
      'below 30 MHz the power is that of a vertical mast, and the ground carries no horizontal wave',
      'Write vertical.',
    );
  }
}

function checkCoordinates(where: string, { latitude, longitude }: Coordinates): void {
  within(`${where}.latitude`, latitude, -Math.PI / 2, Math.PI / 2, 'rad', 'latitudes end at the poles');
  within(`${where}.longitude`, longitude, -2 * Math.PI, 2 * Math.PI, 'rad', 'a longitude is at most one turn');
}

function within(where: string, value: number, low: number, high: number, unit: string, why: string): void {
  if (value >= low && value <= high) return;
  const span = unit ? `${low} to ${high} ${unit}` : `${low} to ${high}`;
  throw new GivenError(where, `${value} ${unit}`.trim(), why, `Give a number from ${span}.`);
}

function finite(where: string, value: number, unit: string): void {
  if (!Number.isFinite(value)) throw new GivenError(where, `${value} ${unit}`, 'it is not a number', 'Give a finite number.');
}
