import { GivenError, type Listener, type Place, type ReceivedField, receiveAll, sheetInductance } from '#engine';
import type { Drawer } from '#set-file';
import { type AerialChoice, aerialChoices } from './aerial-choices.ts';
import type { WantedBand } from './covering.ts';
import { PITCHES } from './design.ts';
import { type Stock, stockOf } from './stock.ts';

/** What to look for, and where. */
export interface SearchRequest {
  readonly place: Place;
  readonly listener: Listener;
  readonly drawer: Drawer;
  /** stations that must be on the dial and count for the aim; empty: whichever is heard best */
  readonly wanted: readonly number[];
  /** that the dial must cover, with the margin of the limits; left out: only stations count */
  readonly band?: WantedBand;
}

/** All that can be built of a drawer at a place, as lists from which a design picks. */
export interface Space {
  readonly place: Place;
  readonly listener: Listener;
  readonly fields: readonly ReceivedField[];
  /** indices of stations that count */
  readonly stations: readonly number[];
  /** whether every one of them must be on the dial */
  readonly all: boolean;
  readonly band: WantedBand | null;
  readonly drawer: Drawer;
  readonly stock: Stock;
  readonly aerials: readonly AerialChoice[];
}

/** @throws GivenError for a band that is none */
export function spaceOf({ place, listener, drawer, wanted, band }: SearchRequest): Space {
  if (band && !(band.from > 0 && band.to > band.from && band.to < Number.POSITIVE_INFINITY))
    throw new GivenError(
      'band',
      `${band.from} Hz to ${band.to} Hz`,
      'a band goes from a frequency to a higher one',
      'Give the lower end first.',
    );
  const fields = receiveAll(place);
  const stock = stockOf(drawer);
  const stations = wanted.length > 0 ? wanted : fields.map((_, k) => k);
  return {
    place,
    listener,
    fields,
    stations,
    all: wanted.length > 0,
    band: band ?? null,
    drawer,
    stock,
    aerials: aerialChoices(
      stock,
      stations.map((k) => fields[k]!),
      place.site.height,
    ),
  };
}

/** Pitch of a winding [m]: to a twentieth of a millimetre upwards. */
export const pitchOf = (wireDiameter: number, pitch: number): number => Math.ceil(PITCHES[pitch]! * wireDiameter * 2e4 - 1e-6) / 2e4;

/** What hangs on a tank besides the tuning capacitor, at least and at most [F]; leads and wiring, at most [H]: wide, so that no coil that tunes is left out. */
const LEAST_STRAYS = 0.5e-12;
const MOST_STRAYS = { vhf: 30e-12, below: 600e-12 };
const VHF = 30e6;
const MOST_LEADS = 0.15e-6;
/** Error of the current sheet for a few turns of thick wire, either way. */
const SHEET = 1.6;
const MOST_HALVES = 400;

const windows = new WeakMap<Space, Map<string, readonly [number, number] | null>>();

/**
 * Least and most half turns with which a winding could tune: an envelope, wider than the truth, never narrower.
 *
 * @param station - that it is to tune to, of those that count; left out: any of them
 */
export function windowOf(
  space: Space,
  former: number,
  wire: number,
  pitch: number,
  capacitor: number,
  across: number,
  station?: number,
): readonly [number, number] | null {
  const known = windows.get(space) ?? new Map<string, readonly [number, number] | null>();
  windows.set(space, known);
  const key = `${former} ${wire} ${pitch} ${capacitor} ${across} ${station ?? ''}`;
  let window = known.get(key);
  if (window === undefined) {
    window = findWindow(space, station === undefined ? space.stations : [station], former, wire, pitch, capacitor, across);
    known.set(key, window);
  }
  return window;
}

function findWindow(
  space: Space,
  stations: readonly number[],
  former: number,
  wire: number,
  pitch: number,
  capacitor: number,
  across: number,
): readonly [number, number] | null {
  const { stock } = space;
  const f = stations.map((k) => space.fields[k]!.station.frequency);
  const low = 2 * Math.PI * Math.min(...f);
  const high = 2 * Math.PI * Math.max(...f);
  const { minimum, maximum } = stock.capacitors[capacitor]!.part;
  const fixed = across === 0 ? 0 : stock.fixedCapacitors[across - 1]!.capacitance;
  const most = 1 / (low * low * (minimum + fixed + LEAST_STRAYS));
  const least = 1 / (high * high * (maximum + fixed + (Math.max(...f) < VHF ? MOST_STRAYS.below : MOST_STRAYS.vhf)));
  const { wireDiameter } = stock.wires[wire]!.part;
  const step = pitchOf(wireDiameter, pitch);
  const diameter = stock.formers[former]!.diameter + wireDiameter;
  let from = 0;
  let to = 0;
  for (let halves = 2; halves <= MOST_HALVES; halves++) {
    const sheet = sheetInductance(halves / 2, diameter, (halves / 2) * step);
    if (sheet * SHEET + MOST_LEADS < least) continue;
    if (sheet / SHEET > most) break;
    if (from === 0) from = halves;
    to = halves;
  }
  return from === 0 ? null : [from, to];
}
