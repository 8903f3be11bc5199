import { type AerialDescription, type ReceivedField, SPEED_OF_LIGHT, type WireShape } from '#engine';
import type { Stock, StockRod, StockWire } from '../stock.ts';

/** An aerial that the drawer holds the parts of. */
export interface AerialChoice {
  /** kind and direction, by which aerials that differ in length only belong together */
  readonly group: string;
  readonly description: AerialDescription;
  /** taken from the drawer's wires, by index [m] */
  readonly wire: readonly { readonly index: number; readonly length: number }[];
}

/** One station that an aerial is cut for, at the site. */
export interface Sight {
  readonly wavelength: number;
  /** plainly vertical polarisation: elements stand upright */
  readonly upright: boolean;
  readonly polarisation: ReceivedField['station']['polarisation'];
  /** whole degrees: two masts nearly in line share an aerial, and a bearing is laid out no better */
  readonly degrees: number;
  /** the same [rad] */
  readonly bearing: number;
  /** of the site [m] */
  readonly height: number;
}

export function sightOf({ station, bearing }: ReceivedField, height: number): Sight {
  const degrees = Math.round((bearing * 180) / Math.PI);
  const { polarisation } = station;
  return {
    wavelength: SPEED_OF_LIGHT / station.frequency,
    upright: polarisation === 'vertical',
    polarisation,
    degrees,
    bearing: (degrees * Math.PI) / 180,
    height,
  };
}

/** Computed from its wires, far enough from the ground to leave it out. */
export const ofWires = (shape: WireShape, height: number): AerialDescription => ({
  kind: 'wires',
  shape,
  height,
  ground: { kind: 'free-space' },
});

/** A wire hangs as it is: any of the drawer will do for an aerial that is at least so thick [m]: thinner breaks in the wind (common practice, no source). */
const THINNEST = 0.4e-3;

export const hangs = (wire: StockWire): boolean => wire.wireDiameter >= THINNEST;

/** The thinnest wire of the drawer that hangs and is long enough. */
export function wireFor({ wires }: Stock, length: number): { readonly index: number; readonly part: StockWire } | null {
  const index = wires.findIndex(({ part }) => hangs(part) && length <= part.length);
  return index < 0 ? null : { index, part: wires[index]!.part };
}

/** The longest wire that hangs [m]; 0 for none. */
export const longestWire = ({ wires }: Stock): number => Math.max(0, ...wires.filter((w) => hangs(w.part)).map((w) => w.part.length));

/** As one cuts: to the centimetre. */
export const centimetres = (length: number): number => Math.round(length * 100) / 100;
export const cutDown = (length: number): number => Math.floor(length * 100 + 1e-9) / 100;

/** Wires are thin: at least so many diameters long. */
const THIN = 30;

export const thin = (length: number, diameter: number): boolean => length > THIN * diameter;

/** Lengths of a list, in shares of the wavelength, that the drawer reaches, and the longest it has where that is shorter than the last. */
export function lengths(shares: readonly number[], wavelength: number, most: number): number[] {
  const wanted = shares.map((k) => centimetres(k * wavelength));
  const within = wanted.filter((l) => l <= most);
  if (within.length < wanted.length) within.push(cutDown(most));
  return [...new Set(within)].sort((a, b) => a - b);
}

/** Pieces of a rod that an element takes: itself, or two halves joined, or cut apart, in the middle. */
export function pieces(rod: StockRod, length: number): number {
  if (length <= rod.length) return 1;
  return length <= 2 * rod.length ? 2 : Number.POSITIVE_INFINITY;
}
