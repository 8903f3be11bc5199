import type { RodCounterpart } from '#engine';
import type { Stock, StockRod } from '../stock.ts';
import { type AerialChoice, centimetres, lengths, longestWire, ofWires, type Sight, thin, wireFor } from './cutting.ts';

/** Lengths tried, in wavelengths: about a quarter wave and below; with radials, which are cut to resonance, near it. */
const DROPPED = [0.08, 0.12, 0.16, 0.2, 0.235, 0.27];
const GROUNDED = [0.2, 0.235, 0.27];
/** Level, and drooping as they do where they guy the mast. */
const DROOPS = [0, Math.PI / 4];
const RADIALS = 3;

const rodAerial = (s: Sight, rod: StockRod, length: number, against: RodCounterpart): AerialChoice['description'] =>
  ofWires({ kind: 'rod', rod: { length, diameter: rod.diameter, metal: rod.metal }, lean: { angle: 0, bearing: 0 }, against }, s.height);

/** A rod with a drop wire as long as itself; for fields that stand upright also one with radials of wire. */
export function rods(stock: Stock, s: Sight): AerialChoice[] {
  return stock.rods.flatMap((rod) => [...dropped(stock, s, rod), ...(s.polarisation === 'horizontal' ? [] : grounded(stock, s, rod))]);
}

function dropped(stock: Stock, s: Sight, rod: StockRod): AerialChoice[] {
  return lengths(DROPPED, s.wavelength, Math.min(rod.length, longestWire(stock), s.height)).flatMap((length): AerialChoice[] => {
    const wire = wireFor(stock, length);
    if (!wire || !thin(length, Math.max(rod.diameter, wire.part.wireDiameter))) return [];
    const against = { kind: 'drop-wire' as const, length, diameter: wire.part.wireDiameter, metal: wire.part.metal };
    return [{ group: 'rod and drop wire', description: rodAerial(s, rod, length, against), wire: [{ index: wire.index, length }] }];
  });
}

function grounded(stock: Stock, s: Sight, rod: StockRod): AerialChoice[] {
  return GROUNDED.map((k) => centimetres(k * s.wavelength)).flatMap((length) => {
    const wire = wireFor(stock, RADIALS * length);
    if (length > rod.length || !wire || !thin(length, Math.max(rod.diameter, wire.part.wireDiameter))) return [];
    const { wireDiameter: diameter, metal } = wire.part;
    return DROOPS.filter((droop) => length * Math.sin(droop) < s.height).map(
      (droop): AerialChoice => ({
        group: 'rod and radials',
        description: rodAerial(s, rod, length, { kind: 'radials', count: RADIALS, droop, length, diameter, metal }),
        wire: [{ index: wire.index, length: RADIALS * length }],
      }),
    );
  });
}
