import * as z from 'zod/mini';
import { about, quantity, withDefault } from './quantity.ts';

const frequency = quantity('frequency', { above: 0, max: 1e6 }, 'frequency of the point');
const room = about(
  z.union([
    quantity('weightedLevel', { min: -50, max: 140 }, 'A-weighted level, spread over frequency as the noise of a quiet room'),
    z.discriminatedUnion('kind', [
      z.strictObject({ kind: z.literal('noise-criterion'), rating: quantity('ratio', { min: -50, max: 140 }, 'NC rating') }),
      z.strictObject({ kind: z.literal('a-weighted'), level: quantity('weightedLevel', { min: -50, max: 140 }, 'A-weighted level') }),
      z.strictObject({
        kind: z.literal('bands'),
        bands: z
          .array(z.strictObject({ frequency, level: quantity('soundLevel', { min: -50, max: 140 }, 'level of the band') }))
          .check(z.minLength(2)),
      }),
    ]),
  ]),
  'noise of the room: an A-weighted level, a noise criterion, or octave or third-octave band levels',
  '30 dB(A)',
);

export const earForm = about(
  z.strictObject({
    hearingLevel: withDefault(
      about(
        z.array(z.strictObject({ frequency, level: quantity('hearingLevel', { min: -30, max: 130 }, 'hearing level there') })),
        'audiogram by ascending frequency; empty for normal hearing',
      ),
      [],
    ),
    room: withDefault(room, '30 dB(A)'),
  }),
  'who listens, and in what room',
);

export const programmeForm = about(
  z.strictObject({
    tone: withDefault(quantity('frequency', { min: 20, max: 15e3 }, 'test tone at rated deviation or depth'), '1 kHz'),
    level: withDefault(quantity('decibels', { min: -60, max: 12 }, 'programme against the multiplex power limit of ITU-R BS.412'), 0),
  }),
  'what a station is taken to send when a set is judged by levels',
);

export type EarForm = z.core.output<typeof earForm>;
