import { changed, type Row } from './row.ts';

const here = { latitude: '52.5', longitude: '-1.5' };
const profile = (...points: [string, string][]) => ({ 'place.stations.0.terrain': { points } });
const inFen = 'place.stations[0]';
const fen = '{\n        "name": "Fen Talk"';

export const contradictionsOfPlace: readonly Row[] = [
  // place
  changed('no mast', { 'place.stations.0.mastHeight': undefined }, `${inFen}.mastHeight`, fen, /from 30 MHz on/, /120 m/),
  changed('no distance', { 'place.stations.0.distance': undefined }, `${inFen}.distance`, fen, /missing/, /"12 km"/),
  changed(
    'coordinates of the mast alone',
    { 'place.stations.0.distance': undefined, 'place.stations.0.bearing': undefined, 'place.stations.0.coordinates': here },
    'place.site.coordinates',
    '{\n      "height"',
    /"Fen Talk".*site needs its own/,
    /latitude/,
  ),
  changed(
    'coordinates and distance',
    { 'place.site.coordinates': here, 'place.stations.0.coordinates': here },
    `${inFen}.coordinates`,
    '{\n          "latitude"',
    /given as well/,
    /or coordinates/,
  ),
  changed(
    'a site inside the mast',
    { 'place.stations.0.distance': '10 cm', 'place.stations.0.mastHeight': '6 m' },
    `${inFen}.distance`,
    '"10 cm"',
    /inside the transmitting aerial/,
    /foot of the mast/,
  ),
  changed(
    'two stations of one name',
    { 'place.stations.1.name': 'Fen Talk' },
    'place.stations[1].name',
    '"Fen Talk",\n        "frequency": "909',
    /station 1/,
    /its own name/,
  ),
  changed(
    'stereo on medium wave',
    { 'place.stations.1.stereo': true },
    'place.stations[1].stereo',
    'true',
    /sends am/,
    /"modulation": "fm"/,
  ),
  changed(
    'a level wave along the ground',
    { 'place.stations.1.polarisation': 'horizontal' },
    'place.stations[1].polarisation',
    '"horizontal"\n',
    /vertical mast/,
    /vertical/,
  ),
  changed(
    'the method terrain without terrain',
    { 'place.method': 'terrain', 'place.stations.1.measuredField': '1 mV/m' },
    `${inFen}.terrain`,
    fen,
    /no profile/,
    /auto/,
  ),
  changed(
    'a profile that turns back',
    profile(['0 m', '10 m'], ['2 km', '30 m'], ['1 km', '20 m']),
    `${inFen}.terrain.points[2][0]`,
    '"1 km"',
    /beyond the point before it/,
    /Sort/,
  ),
  changed(
    'a profile that starts elsewhere',
    profile(['100 m', '10 m'], ['2.6 km', '30 m']),
    `${inFen}.terrain.points[0][0]`,
    '"100 m"',
    /foot of the mast/,
    /be 0/,
  ),
  changed('a profile of one point', profile(['0 m', '10 m']), `${inFen}.terrain.points[0][0]`, '"0 m"', /two points/, /site/),
  changed(
    'a profile to somewhere else',
    profile(['0 m', '10 m'], ['9 km', '30 m']),
    `${inFen}.terrain`,
    '{\n          "points"',
    /mast is 2.6 km away/,
    /to the site/,
  ),
];
