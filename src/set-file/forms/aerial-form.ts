import * as z from 'zod/mini';
import { axis, earthResistance, metal, orientation, rodLength, wire, withFeeder } from './aerial-keys.ts';
import { about, quantity, withDefault } from './quantity.ts';
import { wiresForm } from './wires-form.ts';

const impedancePoint = z.strictObject({
  frequency: quantity('frequency', { above: 0, max: 1e11 }, 'frequency of the point'),
  resistance: quantity('resistance', { above: 0, max: 1e9 }, 'terminal resistance'),
  reactance: withDefault(quantity('resistance', { min: -1e9, max: 1e9 }, 'terminal reactance, inductive positive'), 0),
});

const electrical = z.strictObject({
  kind: z.literal('electrical'),
  impedance: about(
    z.union([
      quantity('resistance', { above: 0, max: 1e9 }, 'resistance at every frequency'),
      z.array(impedancePoint).check(z.minLength(1)),
    ]),
    'terminal impedance: one resistance for all frequencies, or points by ascending frequency (one point: constant; more: read between)',
    '75 ohm',
  ),
  gain: z.optional(quantity('gain', { min: -150, max: 60 }, 'realised gain towards broadside; this or effectiveLength')),
  effectiveLength: z.optional(quantity('length', { above: 0, max: 1000 }, 'effective length towards broadside; this or gain')),
  orientation,
  frontToBack: withDefault(quantity('decibels', { min: 0, max: 200 }, 'front-to-back ratio; 0 for a two-sided pattern'), 0),
  ...withFeeder,
});

const dipole = z.strictObject({
  kind: z.literal('dipole'),
  length: rodLength('tip to tip'),
  diameter: withDefault(wire('of the conductor'), '6 mm'),
  metal: withDefault(metal, 'copper'),
  orientation,
  ...withFeeder,
});

const plane = z.strictObject({ kind: z.literal('plane') });
const counterpoise = about(
  z.union([
    z.literal('plane'),
    z.discriminatedUnion('kind', [
      plane,
      z.strictObject({
        kind: z.literal('drop-wire'),
        length: rodLength('hanging down from the set'),
        diameter: withDefault(wire('of the wire'), '1 mm'),
      }),
      z.strictObject({ kind: z.literal('set'), size: quantity('length', { min: 1e-3, max: 10 }, 'largest size of the set') }),
      z.strictObject({
        kind: z.literal('earth-wire'),
        length: rodLength('down to the earth rod'),
        diameter: withDefault(wire('of the wire'), '1 mm'),
        earthResistance: withDefault(earthResistance, '100 ohm'),
      }),
    ]),
  ]),
  'what the rod works against: plane (a large metal surface), drop-wire, the set alone, or earth-wire',
);
const whip = z.strictObject({
  kind: z.literal('whip'),
  length: rodLength('of the rod'),
  diameter: withDefault(wire('of the rod, the mean of a telescopic one'), '5 mm'),
  metal: withDefault(metal, 'brass'),
  counterpoise: withDefault(counterpoise, { kind: 'set', size: '15 cm' }),
  ...withFeeder,
});

const loop = z.strictObject({
  kind: z.literal('loop'),
  diameter: quantity('length', { min: 1e-3, max: 100 }, 'across the loop'),
  turns: withDefault(quantity('turns', { min: 1, max: 500 }, 'turns'), 1),
  wireDiameter: withDefault(wire('of the wire'), '1 mm'),
  windingLength: z.optional(
    quantity('length', { above: 0, max: 100 }, 'along the axis, outer edge to outer edge; if not given, turns lie one wire apart'),
  ),
  metal: withDefault(metal, 'copper'),
  axis,
  ...withFeeder,
});

const wireToEarth = z.strictObject({
  kind: z.literal('wire-to-earth'),
  horizontal: withDefault(quantity('length', { min: 0, max: 1000 }, 'level part'), 0),
  vertical: quantity('length', { min: 1e-3, max: 1000 }, 'rising part'),
  diameter: withDefault(wire('of the wire'), '1 mm'),
  earthResistance: withDefault(earthResistance, '100 ohm'),
  ...withFeeder,
});

const coil = z.strictObject({ kind: z.literal('coil'), axis, ...withFeeder });

export const aerialForm = about(
  z.discriminatedUnion('kind', [electrical, dipole, whip, loop, wireToEarth, coil, wiresForm]),
  'the aerial: by its electrical values; a dipole, a whip, a small loop, a wire to earth, by closed forms; any of several shapes computed from its wires; or the tuning coil itself',
);

export type AerialForm = z.core.output<typeof aerialForm>;
