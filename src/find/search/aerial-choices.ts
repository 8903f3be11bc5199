import { type AerialDescription, type ReceivedField, SPEED_OF_LIGHT } from '#engine';
import type { Stock, StockRod } from './stock.ts';

/** An aerial that the drawer holds the parts of. */
export interface AerialChoice {
  /** kind and direction, by which aerials that differ in length only belong together */
  readonly group: string;
  readonly description: AerialDescription;
  /** taken from the drawer's wires, by index [m] */
  readonly wire: readonly { readonly index: number; readonly length: number }[];
}

const VHF = 30e6;
/** Whole lengths tried, in wavelengths: dipoles about their resonance and below, rods about a quarter wave. */
const DIPOLES = [0.3, 0.36, 0.42, 0.46, 0.475, 0.49, 0.52];
const RODS = [0.08, 0.12, 0.16, 0.2, 0.235, 0.27];
/** Level parts of a wire to earth [m]. */
const LEVEL_WIRES = [5, 8, 12, 16, 20, 30, 40, 60];
/** A wire hangs as it is: any of the drawer will do for an aerial that is at least so thick [m]: thinner breaks in the wind (common practice, no source). */
const THINNEST = 0.4e-3;
/** Joined halves of a dipole come from two pieces alike. */
const PIECES = 2;

/**
 * Aerials that can be made of the drawer for some stations: the coil alone, dipoles of two rods or of wire, a rod with a drop wire, a wire to earth in the garden.
 *
 * Those for VHF are computed from their wires, and each description is one object, whose model is therefore solved once. Aerials of one group follow each other by length.
 *
 * @param stations - those to be heard, as they arrive
 * @param height - of the site [m]
 */
export function aerialChoices(stock: Stock, stations: readonly ReceivedField[], height: number): readonly AerialChoice[] {
  const out: AerialChoice[] = [];
  const seen = new Set<string>();
  const put = (choice: AerialChoice): void => {
    const key = JSON.stringify(choice);
    if (!seen.has(key)) out.push(choice);
    seen.add(key);
  };
  for (const s of stations) for (const choice of coilAlone(s)) put(choice);
  for (const s of stations) {
    if (s.station.frequency < VHF) for (const choice of wiresToEarth(stock)) put(choice);
    else for (const choice of [...dipoles(stock, s, height), ...rods(stock, s, height)]) put(choice);
  }
  // those of one group together, in the order in which groups appear
  const groups = [...new Set(out.map((c) => c.group))];
  return groups.flatMap((g) => out.filter((c) => c.group === g));
}

const upright = (s: ReceivedField): boolean => s.station.polarisation === 'vertical';
/** Whole degrees: two masts nearly in line share an aerial, and a bearing is laid out no better. */
const degrees = (radians: number): number => Math.round((radians * 180) / Math.PI);
const laid = (s: ReceivedField): number => (degrees(s.bearing) * Math.PI) / 180;
/** As one cuts: to the centimetre. */
const centimetres = (length: number): number => Math.round(length * 100) / 100;

function coilAlone(s: ReceivedField): AerialChoice[] {
  const axis = upright(s) ? ({ kind: 'horizontal', plane: laid(s) } as const) : ({ kind: 'vertical' } as const);
  return [{ group: upright(s) ? `coil, edge to ${degrees(s.bearing)}` : 'coil, flat', description: { kind: 'coil', axis }, wire: [] }];
}

function dipoles(stock: Stock, s: ReceivedField, height: number): AerialChoice[] {
  const wavelength = SPEED_OF_LIGHT / s.station.frequency;
  const orientation = upright(s) ? ({ kind: 'vertical' } as const) : ({ kind: 'horizontal', broadside: laid(s) } as const);
  const way = upright(s) ? 'upright' : `broadside to ${degrees(s.bearing)}`;
  const make = (length: number, diameter: number, metal: StockRod['metal']): AerialDescription => ({
    kind: 'wires',
    shape: { kind: 'dipole', length, diameter, metal, orientation, includedAngle: Math.PI, bend: 'down', slope: 0 },
    height,
    ground: { kind: 'free-space' },
  });
  const out: AerialChoice[] = [];
  for (const rod of stock.rods.filter((r) => r.count >= PIECES))
    for (const length of lengths(DIPOLES, wavelength, PIECES * rod.length, rod.diameter))
      out.push({ group: `dipole of rods, ${way}`, description: make(length, rod.diameter, rod.metal), wire: [] });
  const index = stock.wires.findIndex((w) => w.part.wireDiameter >= THINNEST);
  const wire = stock.wires[index];
  if (wire)
    for (const length of lengths(DIPOLES, wavelength, wire.part.length, wire.part.wireDiameter))
      out.push({
        group: `dipole of wire, ${way}`,
        description: make(length, wire.part.wireDiameter, wire.part.metal),
        wire: [{ index, length }],
      });
  return out;
}

function rods(stock: Stock, s: ReceivedField, height: number): AerialChoice[] {
  const wavelength = SPEED_OF_LIGHT / s.station.frequency;
  const index = stock.wires.findIndex((w) => w.part.wireDiameter >= THINNEST);
  const wire = stock.wires[index];
  if (!wire) return [];
  const { wireDiameter: diameter, metal } = wire.part;
  return stock.rods.flatMap((rod) =>
    lengths(RODS, wavelength, Math.min(rod.length, wire.part.length, height), rod.diameter).map((length) => ({
      group: 'rod and drop wire',
      description: {
        kind: 'wires' as const,
        shape: {
          kind: 'rod' as const,
          rod: { length, diameter: rod.diameter, metal: rod.metal },
          lean: { angle: 0, bearing: 0 },
          against: { kind: 'drop-wire' as const, length, diameter, metal },
        },
        height,
        ground: { kind: 'free-space' as const },
      },
      wire: [{ index, length }],
    })),
  );
}

function wiresToEarth(stock: Stock): AerialChoice[] {
  const { garden } = stock;
  if (!garden) return [];
  return stock.wires.flatMap(({ part }, index) =>
    part.wireDiameter < THINNEST
      ? []
      : [...new Set([...LEVEL_WIRES.filter((l) => l < garden.length), garden.length])]
          .filter((l) => l + garden.height <= part.length)
          .map((horizontal) => ({
            group: 'wire to earth',
            description: {
              kind: 'wire-to-earth' as const,
              horizontal,
              vertical: garden.height,
              diameter: part.wireDiameter,
              earthResistance: garden.earthResistance,
            },
            wire: [{ index, length: horizontal + garden.height }],
          })),
  );
}

/** Wires are thin: at least so many diameters long. */
const THIN = 30;

/** Lengths of a list that the drawer reaches, and the longest it has where that is shorter than the last. */
function lengths(shares: readonly number[], wavelength: number, most: number, diameter: number): number[] {
  const wanted = shares.map((k) => centimetres(k * wavelength));
  const within = wanted.filter((l) => l <= most);
  if (within.length < wanted.length) within.push(Math.floor(most * 100) / 100);
  return [...new Set(within)].filter((l) => l > THIN * diameter).sort((a, b) => a - b);
}
