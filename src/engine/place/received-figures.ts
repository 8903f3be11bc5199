import { type Figure, term } from '../figure.ts';
import { EARTH_RADIUS } from './earth.ts';
import { fieldLevel, fieldOfLevel } from './free-space.ts';
import { noiseField } from './radio-noise.ts';
import type { ReceivedField } from './received-field.ts';

/** Standard deviations to either side that hold 80 % of cases. */
const EIGHTY_PERCENT = 1.2816;
/** Bandwidth the noise field is given for [Hz]: a channel of each kind. */
const CHANNEL = { fm: 200e3, am: 10e3 } as const;

/** A received field beside what it was made of. */
type Worked = ReceivedField['record'] & { readonly received: ReceivedField };

/** Every number of a received field that may be doubted, with its working. */
export function receivedFigures(received: ReceivedField): readonly Figure[] {
  const record = { ...received.record, received };
  return [...pathFigures(record), ...stepFigures(record), ...fieldFigures(record), ...noiseFigures(record), ...exposureFigures(record)];
}

function pathFigures({ received, situation: { site, station } }: Worked): Figure[] {
  const byCoordinates = 'coordinates' in station.position ? station.position.coordinates : null;
  const working = byCoordinates
    ? {
        formula: 'd = 2 R asin sqrt(sin^2(dphi/2) + cos phi1 cos phi2 sin^2(dlambda/2))',
        terms: [
          term('phi1', 'latitude of the site', site.coordinates!.latitude, 'rad'),
          term('lambda1', 'longitude of the site', site.coordinates!.longitude, 'rad'),
          term('phi2', 'latitude of the mast', byCoordinates.latitude, 'rad'),
          term('lambda2', 'longitude of the mast', byCoordinates.longitude, 'rad'),
          term('R', 'radius of the earth', EARTH_RADIUS, 'm'),
        ],
        source: 'great circle on a sphere (haversine)',
        holds: 'within 0.6 % of the ellipsoid',
      }
    : { formula: 'as given', terms: [], source: 'given by the user' };
  const method = byCoordinates ? 'great circle' : 'given';
  return [
    { name: 'place.distance', label: 'distance to the mast', value: received.distance, unit: 'm', method, working },
    { name: 'place.bearing', label: 'bearing of the mast', value: received.bearing, unit: 'rad', method, working },
    {
      name: 'place.elevation',
      label: 'elevation of the arriving wave',
      value: received.elevation,
      unit: 'rad',
      method: received.method === 'ground-wave' ? 'along the ground' : 'ray over an effective earth',
      working: {
        formula: received.method === 'ground-wave' ? '0' : 'atan((h1 - h2)/d) - d/(2 a), or the edge or horizon that hides the mast',
        terms: [
          term('h1', 'height of the mast aerial', station.mastHeight, 'm'),
          term('h2', 'height of the receiving aerial', site.height, 'm'),
          term('d', 'distance', received.distance, 'm'),
        ],
        source: 'geometry, median refraction (ITU-R P.526-15 sec. 3)',
      },
    },
  ];
}

function stepFigures({ received, steps }: Worked): Figure[] {
  const free = steps[0]!;
  const figures: Figure[] = [
    {
      name: 'place.freeSpaceField',
      label: `field, ${free.label}`,
      value: fieldOfLevel(free.decibels),
      unit: 'V/m rms',
      method: 'P.525',
      working: free.working(),
    },
  ];
  steps.forEach((step, i) => {
    figures.push({
      name: `place.step.${step.name}`,
      label: step.label,
      value: step.decibels,
      unit: i === 0 ? 'dB re 1 uV/m' : 'dB',
      method: received.method,
      working: step.working(),
    });
  });
  return figures;
}

function fieldFigures({ received, steps, horizontalShare, location, entry, situation }: Worked): Figure[] {
  const { field, spread, method } = received;
  const share = term('s', 'share of the power that arrives horizontally polarised', horizontalShare, '1');
  const total = term('E', 'field at the aerial', field, 'V/m rms');
  return [
    {
      name: 'place.field',
      label: 'median field at the aerial',
      value: field,
      unit: 'V/m rms',
      method,
      low: field * 10 ** ((-EIGHTY_PERCENT * spread) / 20),
      high: field * 10 ** ((EIGHTY_PERCENT * spread) / 20),
      working: {
        formula: `E = 1e-6 10^((${steps.map((_, i) => `S${i + 1}`).join(' + ')})/20)`,
        terms: steps.map((step, i) => term(`S${i + 1}`, step.label, step.decibels, i === 0 ? 'dB re 1 uV/m' : 'dB')),
        source: [...new Set(steps.map((step) => step.source))].join('; '),
        holds: 'median over 50 % of time and of places around; the range holds 80 % of places',
      },
    },
    {
      name: 'place.fieldLevel',
      label: 'median field strength level',
      value: fieldLevel(field),
      unit: 'dB re 1 uV/m',
      method,
      low: fieldLevel(field) - EIGHTY_PERCENT * spread,
      high: fieldLevel(field) + EIGHTY_PERCENT * spread,
      working: { formula: '20 log10(1e6 E)', terms: [total], source: 'definition' },
    },
    {
      name: 'place.horizontal',
      label: 'horizontal component of the field',
      value: received.horizontal,
      unit: 'V/m rms',
      method,
      working: { formula: 'E sqrt(s)', terms: [total, share], source: `polarisation of the station: ${situation.station.polarisation}` },
    },
    {
      name: 'place.vertical',
      label: 'vertical component of the field',
      value: received.vertical,
      unit: 'V/m rms',
      method,
      working: {
        formula: 'E sqrt(1 - s)',
        terms: [total, share],
        source: `polarisation of the station: ${situation.station.polarisation}`,
      },
    },
    {
      name: 'place.spread',
      label: 'standard deviation from place to place',
      value: spread,
      unit: 'dB',
      method: entry ? 'location variability and building' : 'location variability',
      working: {
        formula: `sqrt(sigma_L^2 + sigma_B^2), ${location.formula}`,
        terms: [
          term('sigma_L', 'from place to place outdoors', location.decibels, 'dB'),
          term('sigma_B', 'from room to room, half the span of the 16 and 84 % rooms', entry ? entry.spread : 0, 'dB'),
        ],
        source: entry ? `${location.source}; ITU-R P.2109-2` : location.source,
        holds: 'the two taken as independent',
      },
    },
  ];
}

function noiseFigures({ noise, situation: { site, station } }: Worked): Figure[] {
  const bandwidth = CHANNEL[station.modulation.kind];
  const aerial = station.frequency < 30e6 ? 'monopole' : 'dipole';
  const level = noiseField(noise.figure, station.frequency, bandwidth, aerial);
  const low = noiseField(noise.figure - noise.lowerDecile, station.frequency, bandwidth, aerial);
  const high = noiseField(noise.figure + noise.upperDecile, station.frequency, bandwidth, aerial);
  return [
    {
      name: 'place.noiseFigure',
      label: 'external noise figure',
      value: noise.figure,
      unit: 'dB above k T0 b',
      method: noise.from === 'galactic' ? 'P.372 galactic noise' : `P.372 man-made noise, ${site.radioNoise}`,
      low: noise.figure - noise.lowerDecile,
      high: noise.figure + noise.upperDecile,
      working: {
        formula: 'Fa = c - d log10 f',
        terms: [
          term('c', `constant of ${noise.from} noise`, noise.c, 'dB'),
          term('d', 'slope', noise.d, 'dB'),
          term('f', 'carrier', station.frequency / 1e6, 'MHz'),
        ],
        source: 'ITU-R P.372-16 secs 5, 6',
        holds: 'man-made 0.3 to 250 MHz; the greater of man-made and galactic noise; lightning not counted',
      },
    },
    {
      name: 'place.noiseField',
      label: 'field that the noise amounts to in one channel',
      value: level,
      unit: 'dB re 1 uV/m',
      method: 'P.372',
      low,
      high,
      working: {
        formula: `E_n = Fa + 20 log10 f + 10 log10 b - ${aerial === 'dipole' ? '99.0' : '95.5'}`,
        terms: [
          term('Fa', 'external noise figure', noise.figure, 'dB'),
          term('f', 'carrier', station.frequency / 1e6, 'MHz'),
          term('b', 'bandwidth of one channel', bandwidth, 'Hz'),
        ],
        source: 'ITU-R P.372-16 eqs 7, 8',
        holds: aerial === 'dipole' ? 'half-wave dipole in free space' : 'short vertical monopole on perfect ground',
      },
    },
  ];
}

function exposureFigures({ received: { exposure }, situation: { station }, steps }: Worked): Figure[] {
  const f = term('f', 'carrier', station.frequency / 1e6, 'MHz');
  return [
    {
      name: 'place.exposure.level',
      label: 'public exposure reference level',
      value: exposure.level,
      unit: 'V/m rms',
      method: 'ICNIRP 2020',
      working: {
        formula: '300/f^0.7 to 30 MHz (83 at most to 10 MHz), 27.7 to 400 MHz, 1.375 sqrt f above',
        terms: [f],
        source: exposure.source,
      },
    },
    {
      name: 'place.exposure.ratio',
      label: 'field outdoors over the public reference level',
      value: exposure.ratio,
      unit: '1',
      method: 'greater of free space and predicted field',
      working: {
        formula: 'E_out/E_ref',
        terms: [
          term('E0', 'free-space field', fieldOfLevel(steps[0]!.decibels), 'V/m rms'),
          term('E_out', 'the greater of that and the field outdoors', exposure.ratio * exposure.level, 'V/m rms'),
          term('E_ref', 'reference level', exposure.level, 'V/m rms'),
        ],
        source: exposure.source,
        holds: "main beam of the mast's aerial; the nearest stations add in power",
      },
    },
  ];
}
