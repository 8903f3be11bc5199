import type { Place, Site, Station } from '#engine';

/** A town that is on no map: one FM station 12 km off, an aerial 1.5 m high in a garden. */
export const site: Site = {
  height: 1.5,
  surroundings: 'suburban',
  ground: { permittivity: 22, conductivity: 0.003 },
  radioNoise: 'residential',
};

export const station: Station = {
  name: 'Radio Ostwick',
  frequency: 98e6,
  power: 10e3,
  polarisation: 'horizontal',
  mastHeight: 120,
  position: { distance: 12e3, bearing: 0.5 },
  modulation: { kind: 'fm', deviation: 75e3, preEmphasis: 50e-6, stereo: true },
  programme: 'speech',
};

export const mediumWave: Station = {
  ...station,
  name: 'Ostwick medium wave',
  frequency: 999e3,
  power: 5e3,
  polarisation: 'vertical',
  mastHeight: 70,
  modulation: { kind: 'am', depth: 0.8 },
};

export function placeOf(given: {
  readonly site?: Partial<Site>;
  readonly method?: Place['method'];
  readonly stations?: readonly Station[];
}): Place {
  return { name: 'Ostwick', site: { ...site, ...given.site }, method: given.method ?? 'auto', stations: given.stations ?? [station] };
}
