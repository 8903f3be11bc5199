import type { PartCategory } from '#parts';

/** What a part of one's own begins with: ordinary values, which read without complaint and are then changed. */
export const NEW_PARTS: Readonly<Record<PartCategory, { readonly name: string; readonly part: Readonly<Record<string, unknown>> }>> = {
  capacitors: { name: 'my capacitor', part: { values: { minimum: '5 pF', maximum: '30 pF' } } },
  detectors: {
    name: 'my detector',
    part: { values: { kind: 'junction', saturationCurrent: '1 uA', junctionCapacitance: '0.5 pF' } },
  },
  earpieces: {
    name: 'my earpiece',
    part: {
      values: {
        kind: 'piezo',
        coupling: 'plug',
        capacitance: '10 nF',
        sensitivity: '100 dB SPL',
        sensitivityAt: '1 V',
        coupler: 'IEC 60318-4',
      },
    },
  },
  transformers: {
    name: 'my transformer',
    part: {
      values: {
        ratio: 12,
        primaryInductance: '20 H',
        primaryResistance: '1 kohm',
        secondaryResistance: '10 ohm',
      },
    },
  },
  wires: { name: 'my wire', part: { values: { wireDiameter: '0.8 mm' }, length: '10 m' } },
};

/** What a former, a rod, a choke and a garden begin with. */
export const NEW_FORMER = { title: 'drill bit', diameter: '8 mm', length: '70 mm' };
export const NEW_ROD = { title: 'brass rod', length: '80 cm', diameter: '4 mm' };
export const NEW_CHOKE = { title: 'choke', inductance: '5 H', resistance: '300 ohm' };
export const NEW_GARDEN = { length: '20 m', height: '5 m' };
/** Of a plastic tube that stays in its coil. */
export const NEW_STAYS = { permittivity: 3 };
