import * as z from 'zod/mini';
import { about, quantity, withDefault } from './quantity.ts';

const resistance = (what: string) => quantity('resistance', { above: 0, max: 1e12 }, what);
const inductance = (what: string) => quantity('inductance', { above: 0, max: 1e6 }, what);

export const transformerForm = about(
  z.strictObject({
    ratio: quantity('ratio', { above: 0, max: 1e4 }, 'primary turns over secondary turns; the detector is on the primary'),
    primaryInductance: inductance('primary with open secondary'),
    primaryResistance: resistance('of the primary winding'),
    secondaryResistance: resistance('of the secondary winding'),
    leakageInductance: z.optional(inductance('leakage seen from the primary; 1 % of the primary inductance if not given (an estimate)')),
    coreLoss: withDefault(resistance('core loss as a resistance across the primary (the default is an estimate)'), '200 kohm'),
    capacitance: withDefault(
      quantity('capacitance', { min: 0, max: 1e-6 }, 'winding capacitance across the primary (the default is an estimate)'),
      '100 pF',
    ),
  }),
  'a transformer between detector and earpiece',
);

const level = quantity('soundLevel', { min: -50, max: 200 }, 'sound pressure level as the coupler reads it');
const common = {
  name: withDefault(about(z.string().check(z.maxLength(200)), 'name of the earpiece'), ''),
  coupling: about(
    z.enum(['insert', 'plug', 'supra-aural', 'circumaural', 'open']),
    'how it sits: insert (sealed in the canal), plug (in the entrance), supra-aural (on the ear), circumaural (around it), open',
  ),
  sensitivity: about(
    z.union([
      level,
      z
        .array(z.strictObject({ frequency: quantity('frequency', { above: 0, max: 1e6 }, 'frequency of the point'), level }))
        .check(z.minLength(1)),
    ]),
    'sound pressure level at sensitivityAt: one level for all frequencies, or points by ascending frequency',
    '98 dB SPL',
  ),
  sensitivityAt: about(
    z.enum(['1 V', '1 mW']),
    'what the sensitivity is for: one volt rms across it, or one milliwatt into its impedance at 1 kHz',
  ),
  coupler: about(z.enum(['IEC 60318-1', 'IEC 60318-4', '6 cc']), 'the coupler that read it'),
  sensitivitySpread: withDefault(
    quantity('decibels', { min: 0, max: 60 }, 'likely error of the sensitivity, one standard deviation'),
    '6 dB',
  ),
  ears: withDefault(about(z.literal([1, 2]), 'how many ears it serves'), 1),
};

const piezo = z.strictObject({
  ...common,
  kind: z.literal('piezo'),
  capacitance: quantity('capacitance', { above: 0, max: 1e-3 }, 'of the element'),
  lossTangent: withDefault(quantity('ratio', { min: 0, max: 10 }, 'loss tangent'), 0.02),
  leakResistance: withDefault(resistance('leak at direct current'), '20 Mohm'),
});

const magnetic = z.strictObject({
  ...common,
  kind: z.literal('magnetic'),
  resistance: resistance('of the winding'),
  inductance: withDefault(quantity('inductance', { min: 0, max: 1e6 }, 'of the winding'), 0),
  motional: z.optional(
    about(
      z.strictObject({
        resistance: resistance('parallel resistance'),
        inductance: inductance('parallel inductance'),
        capacitance: quantity('capacitance', { above: 0, max: 1 }, 'parallel capacitance'),
      }),
      'moving part seen from the terminals',
    ),
  ),
});

export const earpieceForm = about(z.discriminatedUnion('kind', [piezo, magnetic]), 'earpiece, headset or phones');

const choke = z.strictObject({ inductance: inductance('inductance'), resistance: resistance('winding resistance') });

/** The phones with everything named; the published schema lets parts be named in place of their values. */
export function phonesWith<T extends z.core.$ZodType, E extends z.core.$ZodType>(transformer: T, earpiece: E) {
  return about(
    z.strictObject({
      bypass: withDefault(quantity('capacitance', { min: 0, max: 1e-3 }, "RF bypass across the detector's output"), '100 pF'),
      load: z.optional(resistance('resistor across the output, the way for the direct current')),
      choke: z.optional(about(choke, 'inductor across the output, in place of the resistor or beside it')),
      blocking: z.optional(quantity('capacitance', { above: 0, max: 1 }, 'capacitor in series to the transformer or earpiece')),
      transformer: z.optional(transformer),
      earpiece,
    }),
    'everything from the output of the detector to the ear canal',
  );
}

export const phonesForm = phonesWith(transformerForm, earpieceForm);
export type PhonesForm = z.core.output<typeof phonesForm>;
