import type { WireShape } from '#engine';
import type { Stock } from '../stock.ts';
import { type AerialChoice, centimetres, lengths, longestWire, ofWires, pieces, type Sight, thin, wireFor } from './cutting.ts';

type Dipole = Extract<WireShape, { kind: 'dipole' }>;
type Conductor = Pick<Dipole, 'length' | 'diameter' | 'metal'>;

/** Whole lengths tried, in wavelengths: about the resonance and below. */
const DIPOLES = [0.3, 0.36, 0.42, 0.46, 0.475, 0.49, 0.52];
const FOLDED = [0.44, 0.46, 0.475, 0.49];
const BENT = [0.42, 0.46, 0.49, 0.52];
/** A dipole hung by its middle, its tips pulled down and out. */
const V_ANGLE = (2 / 3) * Math.PI;
/** Between the conductors of a folded dipole [m], as spreaders keep them; common practice, no source. */
const SPREAD = 0.05;
/** Joined halves of a dipole come from two pieces alike. */
const HALVES = 2;

const wayOf = (s: Sight): string => (s.upright ? 'upright' : `broadside to ${s.degrees}`);
const orientationOf = (s: Sight): Dipole['orientation'] =>
  s.upright ? { kind: 'vertical' } : { kind: 'horizontal', broadside: s.bearing };

const dipole = (s: Sight, { length, diameter, metal }: Conductor, includedAngle = Math.PI): Dipole => ({
  kind: 'dipole',
  length,
  diameter,
  metal,
  orientation: orientationOf(s),
  includedAngle,
  bend: 'down',
  slope: 0,
});

/** Dipoles of two rods or of wire. */
export function dipoles(stock: Stock, s: Sight): AerialChoice[] {
  const out: AerialChoice[] = [];
  for (const rod of stock.rods.filter((r) => r.count >= HALVES))
    for (const length of lengths(DIPOLES, s.wavelength, HALVES * rod.length))
      if (thin(length, rod.diameter))
        out.push({ group: `dipole of rods, ${wayOf(s)}`, description: ofWires(dipole(s, { ...rod, length }), s.height), wire: [] });
  for (const length of lengths(DIPOLES, s.wavelength, longestWire(stock)))
    out.push(...wireDipole(stock, s, `dipole of wire, ${wayOf(s)}`, length));
  return out;
}

/** Dipoles of wire hung by their middle as a V: of one group with the straight ones, for fields that lie level. */
export function hungAsV(stock: Stock, s: Sight): AerialChoice[] {
  if (s.upright) return [];
  return BENT.map((k) => centimetres(k * s.wavelength))
    .filter((length) => (length / 2) * Math.cos(V_ANGLE / 2) < s.height)
    .flatMap((length) => wireDipole(stock, s, `dipole of wire, ${wayOf(s)}`, length, V_ANGLE));
}

function wireDipole(stock: Stock, s: Sight, group: string, length: number, angle?: number): AerialChoice[] {
  const wire = wireFor(stock, length);
  if (!wire || !thin(length, wire.part.wireDiameter)) return [];
  const conductor = { length, diameter: wire.part.wireDiameter, metal: wire.part.metal };
  return [{ group, description: ofWires(dipole(s, conductor, angle), s.height), wire: [{ index: wire.index, length }] }];
}

/** Folded dipoles of rods or of wire. */
export function foldedDipoles(stock: Stock, s: Sight): AerialChoice[] {
  const shape = ({ length, diameter, metal }: Conductor): WireShape => ({
    kind: 'folded-dipole',
    length,
    diameter,
    secondDiameter: diameter,
    spacing: SPREAD,
    metal,
    orientation: orientationOf(s),
  });
  const wanted = FOLDED.map((k) => centimetres(k * s.wavelength));
  const rods = stock.rods.flatMap((rod) =>
    wanted
      // two rods, each bent to a U; or four, two of which are bent over at their ends
      .filter((length) => 2 * rod.diameter < SPREAD && HALVES * pieces(rod, length + 2 * SPREAD) <= rod.count)
      .map((length) => ({
        group: `folded dipole of rods, ${wayOf(s)}`,
        description: ofWires(shape({ ...rod, length }), s.height),
        wire: [],
      })),
  );
  const wires = wanted.flatMap((length): AerialChoice[] => {
    const need = 2 * (length + SPREAD);
    const wire = wireFor(stock, need);
    if (!wire || 2 * wire.part.wireDiameter >= SPREAD) return [];
    const description = ofWires(shape({ length, diameter: wire.part.wireDiameter, metal: wire.part.metal }), s.height);
    return [{ group: `folded dipole of wire, ${wayOf(s)}`, description, wire: [{ index: wire.index, length: need }] }];
  });
  return [...rods, ...wires];
}
