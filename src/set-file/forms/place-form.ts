import * as z from 'zod/mini';
import { about, quantity, withDefault } from './quantity.ts';

const FULL_TURN = 2 * Math.PI;

export const GROUND_NAMES = ['wet', 'medium-dry', 'dry', 'very-dry', 'sea', 'fresh-water'] as const;

const coordinates = about(
  z.strictObject({
    latitude: quantity('latitude', { min: -Math.PI / 2, max: Math.PI / 2 }, 'north positive'),
    longitude: quantity('longitude', { min: -Math.PI, max: Math.PI }, 'east positive'),
  }),
  'latitude and longitude, WGS 84',
);

const ground = about(
  z.union([
    z.enum(GROUND_NAMES),
    z.strictObject({
      permittivity: quantity('ratio', { min: 2, max: 100 }, 'relative permittivity'),
      conductivity: quantity('conductivity', { min: 0, max: 1e8 }, 'conductivity'),
    }),
  ]),
  'ground around the site and on the way to the masts: a name of ITU-R P.527, or its constants',
  'medium-dry',
);

const buildingKind = z.enum(['traditional', 'thermally-efficient']);
const building = about(
  z.union([
    buildingKind,
    z.strictObject({
      kind: buildingKind,
      probability: withDefault(
        quantity('ratio', { above: 0, max: 0.999_999 }, 'share of rooms with no more loss than this; 0.5 is the median room'),
        0.5,
      ),
    }),
  ]),
  'the building around the aerial, if it is indoors (ITU-R P.2109)',
  'traditional',
);

const site = z.strictObject({
  coordinates: z.optional(coordinates),
  height: withDefault(quantity('length', { min: 0, max: 1000 }, "height of the aerial's middle above ground"), '1.5 m'),
  surroundings: withDefault(
    about(z.enum(['open', 'suburban', 'urban', 'dense-urban']), 'what stands around: sets the clutter height of ITU-R P.1546'),
    'suburban',
  ),
  ground: withDefault(ground, 'medium-dry'),
  building: z.optional(building),
  radioNoise: withDefault(
    about(z.enum(['city', 'residential', 'rural', 'quiet-rural']), 'man-made radio noise around, ITU-R P.372'),
    'residential',
  ),
});

const profileDistance = quantity('length', { min: 0, max: 1e6 }, 'distance from the mast, ascending from 0');
const profileHeight = quantity('length', { min: -9000, max: 9000 }, 'height of the ground above sea level');
const terrain = about(
  z.union([
    z.strictObject({ csv: about(z.string(), 'CSV file with a column of distances and one of heights', 'hill.csv') }),
    z.strictObject({ points: z.array(z.tuple([profileDistance, profileHeight])) }),
    z.strictObject({ distance: z.array(profileDistance), height: z.array(profileHeight) }),
  ]),
  'profile of the ground from the mast (distance 0) to the site',
  { csv: 'hill.csv' },
);

const station = z.strictObject({
  name: about(z.string().check(z.minLength(1), z.maxLength(200)), 'name, once in a place'),
  frequency: quantity('frequency', { min: 100e3, max: 1e9 }, 'carrier'),
  power: quantity(
    'power',
    { above: 0, max: 1e8 },
    'radiated power: from 30 MHz on over a half-wave dipole (e.r.p.), below over a short vertical monopole on perfect ground (e.m.r.p.)',
  ),
  polarisation: z.optional(about(z.enum(['horizontal', 'vertical', 'mixed']), 'if not given: mixed from 30 MHz on, vertical below')),
  mastHeight: z.optional(
    quantity(
      'length',
      { min: 0, max: 3000 },
      'height of the transmitting aerial above ground at the mast; needed from 30 MHz on, 0 below if not given',
    ),
  ),
  effectiveHeight: z.optional(
    quantity(
      'length',
      { min: -1000, max: 3000 },
      'height over the mean ground 3 to 15 km towards the site (ITU-R P.1546); the mast height if not given',
    ),
  ),
  distance: z.optional(quantity('length', { above: 0, max: 1e6 }, 'from the site to the mast, along the ground; goes with bearing')),
  bearing: z.optional(
    quantity(
      'bearing',
      { min: -FULL_TURN, max: FULL_TURN },
      'from the site to the mast, clockwise from true north; a compass point will do',
    ),
  ),
  coordinates: z.optional(about(coordinates, 'of the mast, in place of distance and bearing; the site needs its own then')),
  modulation: z.optional(about(z.enum(['fm', 'am']), 'if not given: fm from 30 MHz on, am below')),
  deviation: z.optional(quantity('frequency', { above: 0, max: 500e3 }, 'fm: peak deviation at full modulation, 75 kHz if not given')),
  preEmphasis: z.optional(quantity('time', { min: 0, max: 1e-3 }, 'fm: time constant, 50 us if not given')),
  stereo: z.optional(about(z.boolean(), 'fm: stereo multiplex with pilot; true if not given')),
  depth: z.optional(quantity('ratio', { above: 0, max: 1 }, 'am: peak depth of programme, 0.8 if not given')),
  programme: withDefault(about(z.enum(['speech', 'music']), 'what it sends'), 'speech'),
  measuredField: z.optional(
    quantity('field', { above: 0, max: 1e4 }, 'rms field measured at the site; it takes the place of every computed one'),
  ),
  terrain: z.optional(terrain),
});

/** A place as its file gives it: names and short forms not yet turned into values. */
export const placeForm = about(
  z.strictObject({
    name: withDefault(about(z.string().check(z.maxLength(200)), 'name of the place'), ''),
    site: withDefault(about(site, 'where the aerial stands'), {}),
    method: withDefault(
      about(
        z.enum(['auto', 'free-space', 'smooth-earth', 'terrain', 'broadcast-curves', 'ground-wave']),
        'how the field is found; auto: measured if given, else by the terrain if a profile is given, else broadcast curves (from 30 MHz on) or ground wave (below)',
      ),
      'auto',
    ),
    stations: about(z.array(station).check(z.minLength(1)), 'the stations to listen for'),
  }),
  "a listener's site with its stations",
);

export type PlaceForm = z.core.output<typeof placeForm>;
export type StationForm = PlaceForm['stations'][number];
