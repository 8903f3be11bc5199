import type { Ground, Place, Station } from '#engine';
import type { GROUND_NAMES, PlaceForm, StationForm } from '../forms/place-form.ts';

/**
 * Ground constants by name: relative permittivity and conductivity [S/m].
 *
 * Source: ITU-R P.527-3, below 100 MHz (from memory; reference/antennas.md sec. 6.4); `dry` lies between medium dry and very dry: an estimate.
 */
export const GROUNDS: Readonly<Record<(typeof GROUND_NAMES)[number], Ground>> = {
  wet: { permittivity: 30, conductivity: 0.01 },
  'medium-dry': { permittivity: 15, conductivity: 0.001 },
  dry: { permittivity: 7, conductivity: 0.0003 },
  'very-dry': { permittivity: 3, conductivity: 0.0001 },
  sea: { permittivity: 70, conductivity: 5 },
  'fresh-water': { permittivity: 80, conductivity: 0.003 },
};

/** Broadcasting is FM from here on, AM below, unless the file says otherwise [Hz]. */
export const FM_FROM = 30e6;
const DEVIATION = 75e3;
const PRE_EMPHASIS = 50e-6;
const DEPTH = 0.8;
const MEDIAN_ROOM = 0.5;

/** The place for the engine: names looked up, what was left out filled in. */
export function assemblePlace(form: PlaceForm): Place {
  const { coordinates, height, surroundings, ground, building, radioNoise } = form.site;
  return {
    name: form.name,
    site: {
      ...(coordinates && { coordinates }),
      height,
      surroundings,
      ground: typeof ground === 'string' ? GROUNDS[ground] : ground,
      ...(building && { building: typeof building === 'string' ? { kind: building, probability: MEDIAN_ROOM } : building }),
      radioNoise,
    },
    method: form.method,
    stations: form.stations.map(assembleStation),
  };
}

export function isFm(s: StationForm): boolean {
  return s.modulation === undefined ? s.frequency >= FM_FROM : s.modulation === 'fm';
}

function assembleStation(s: StationForm): Station {
  const { terrain } = s;
  return {
    name: s.name,
    frequency: s.frequency,
    power: s.power,
    polarisation: s.polarisation ?? (s.frequency >= FM_FROM ? 'mixed' : 'vertical'),
    mastHeight: s.mastHeight ?? 0,
    ...(s.effectiveHeight !== undefined && { effectiveHeight: s.effectiveHeight }),
    position: s.coordinates ? { coordinates: s.coordinates } : { distance: s.distance!, bearing: s.bearing! },
    modulation: isFm(s)
      ? { kind: 'fm', deviation: s.deviation ?? DEVIATION, preEmphasis: s.preEmphasis ?? PRE_EMPHASIS, stereo: s.stereo ?? true }
      : { kind: 'am', depth: s.depth ?? DEPTH },
    programme: s.programme,
    ...(s.measuredField !== undefined && { measuredField: s.measuredField }),
    ...(terrain &&
      'points' in terrain && { terrain: { distance: terrain.points.map((p) => p[0]), height: terrain.points.map((p) => p[1]) } }),
    ...(terrain && 'distance' in terrain && { terrain }),
  };
}

/** The place as a file gives it, with nothing left out. */
export function placeToForm(place: Place): PlaceForm {
  return {
    name: place.name,
    site: place.site,
    method: place.method,
    stations: place.stations.map(({ position, modulation, terrain, ...rest }) => ({
      ...rest,
      ...position,
      modulation: modulation.kind,
      ...(modulation.kind === 'fm'
        ? { deviation: modulation.deviation, preEmphasis: modulation.preEmphasis, stereo: modulation.stereo }
        : { depth: modulation.depth }),
      ...(terrain && { terrain: { distance: [...terrain.distance], height: [...terrain.height] } }),
    })),
  };
}
