import type { DimensionName } from '#units';

/** A column of a table of stations: the key of the set file it stands for, and how its head is written. */
export interface StationColumn {
  readonly key: 'name' | 'frequency' | 'power' | 'polarisation' | 'mastHeight' | 'distance' | 'bearing' | 'stereo' | 'programme';
  /** as it is written, then what is read as well */
  readonly heads: readonly [string, ...string[]];
  /** of a quantity; null for words */
  readonly dimension: DimensionName | null;
}

/** The columns of a table of stations, in the order in which they are written. */
export const STATION_COLUMNS: readonly StationColumn[] = [
  { key: 'name', heads: ['name', 'station'], dimension: null },
  { key: 'frequency', heads: ['frequency'], dimension: 'frequency' },
  { key: 'power', heads: ['power', 'radiated power'], dimension: 'power' },
  { key: 'polarisation', heads: ['polarisation', 'polarization'], dimension: null },
  { key: 'mastHeight', heads: ['mast height', 'height'], dimension: 'length' },
  { key: 'distance', heads: ['distance'], dimension: 'length' },
  { key: 'bearing', heads: ['bearing'], dimension: 'bearing' },
  { key: 'stereo', heads: ['stereo'], dimension: null },
  { key: 'programme', heads: ['programme', 'program'], dimension: null },
];

export type StationKey = StationColumn['key'];

/** Words of the stereo column. */
export const STEREO_WORDS: ReadonlyMap<string, boolean> = new Map([
  ['yes', true],
  ['no', false],
  ['true', true],
  ['false', false],
  ['stereo', true],
  ['mono', false],
]);
