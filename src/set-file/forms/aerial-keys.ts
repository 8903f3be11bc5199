import * as z from 'zod/mini';
import { about, quantity, withDefault } from './quantity.ts';

/** What several kinds of aerial have. */

const FULL_TURN = 2 * Math.PI;
export const bearing = (what: string) => quantity('bearing', { min: -FULL_TURN, max: FULL_TURN }, what);

export const METALS = ['copper', 'brass', 'aluminium', 'steel', 'silver'] as const;
export const metal = about(z.enum(METALS), 'what it is made of');
export const wire = (what: string) => quantity('diameter', { min: 10e-6, max: 0.5 }, what);
export const earthResistance = quantity('resistance', { min: 0, max: 1e6 }, 'resistance of the earth connection');

const vertical = z.strictObject({ kind: z.literal('vertical') });
export const orientation = about(
  z.union([
    z.literal('vertical'),
    z.discriminatedUnion('kind', [
      vertical,
      z.strictObject({ kind: z.literal('horizontal'), broadside: bearing('compass bearing at right angles to the element') }),
    ]),
  ]),
  'how a straight element points',
  'vertical',
  { kind: 'horizontal', broadside: 'SE' },
);
export const axis = about(
  z.union([
    z.literal('vertical'),
    z.discriminatedUnion('kind', [
      vertical,
      z.strictObject({
        kind: z.literal('horizontal'),
        plane: bearing('compass bearing in the plane of the turns, along which an upright loop hears best'),
      }),
    ]),
  ]),
  'axis of the winding: vertical for a loop lying flat, horizontal for one standing upright',
  { kind: 'horizontal', plane: 'NE' },
);

const feeder = about(
  z.strictObject({
    length: quantity('length', { min: 0, max: 1000 }, 'length of the line'),
    impedance: withDefault(quantity('resistance', { min: 1, max: 2000 }, 'characteristic impedance'), '75 ohm'),
    velocityFactor: withDefault(
      quantity('ratio', { min: 0.1, max: 1 }, 'velocity on the line over that of light; 0.66 for solid polyethylene'),
      0.66,
    ),
    loss: withDefault(
      quantity('lineLoss', { min: 0, max: 100 }, 'matched loss at lossFrequency (the default: thin coaxial cable, an estimate)'),
      '0.1 dB/m',
    ),
    lossFrequency: withDefault(
      quantity('frequency', { min: 1e3, max: 1e11 }, 'where that loss holds; it grows with the square root of frequency'),
      '100 MHz',
    ),
  }),
  'line between aerial and set',
);
export const withFeeder = { feeder: z.optional(feeder) };

export const rodLength = (what: string) => quantity('length', { min: 1e-3, max: 1000 }, what);
