import {
  type AudioCircuit,
  type CircuitInTime,
  type DescribingFunction,
  detectorModel,
  EARTH,
  type Element,
  type RadioCircuit,
} from '#engine';

/** The receivers of tests/reference/full-carrier/circuits.py and tests/reference/listen/circuits.py as circuits of the engine. */
export interface ReferenceReceiver {
  readonly source: { readonly resistance: number };
  // biome-ignore lint/suspicious/noExplicitAny: several kinds of tank, told apart by `kind`
  readonly tank: any;
  readonly detector: { saturationCurrent: number; ideality: number; seriesResistance: number; temperature: number };
  readonly load: { resistance: number; capacitance: number; commonResistance?: number; commonCapacitance?: number };
}

const resistor = (name: string, a: string, b: string, resistance: number): Element => ({ kind: 'resistor', name, a, b, resistance });
const capacitor = (name: string, a: string, b: string, capacitance: number): Element => ({ kind: 'capacitor', name, a, b, capacitance });

/** Source resistance and tank of a receiver, from node `source` to node `top`. */
export function tankElements({ tank, source }: ReferenceReceiver): Element[] {
  const tuning = capacitor('tuning', 'top', EARTH, tank.capacitance);
  switch (tank.kind) {
    case 'parallel':
      return [
        tuning,
        resistor('source', 'source', 'top', source.resistance),
        { kind: 'windings', name: 'coil', windings: [{ name: 'coil', a: 'top', b: 'low' }], inductance: [[tank.inductance]] },
        resistor('copper', 'low', EARTH, tank.coilResistance),
      ];
    case 'tapped':
      return [
        tuning,
        resistor('source', 'source', 'tap', source.resistance),
        {
          kind: 'windings',
          name: 'coil',
          windings: [
            { name: 'upper', a: 'top', b: 'mid' },
            { name: 'lower', a: 'tap', b: 'low' },
          ],
          inductance: [
            [tank.upper, tank.mutual],
            [tank.mutual, tank.lower],
          ],
        },
        resistor('upper copper', 'mid', 'tap', tank.upperResistance),
        resistor('lower copper', 'low', EARTH, tank.lowerResistance),
      ];
    case 'link':
      return [
        tuning,
        resistor('source', 'source', 'primary', source.resistance),
        {
          kind: 'windings',
          name: 'coils',
          windings: [
            { name: 'link', a: 'primary', b: EARTH },
            { name: 'coil', a: 'top', b: 'low' },
          ],
          inductance: [
            [tank.link, tank.mutual],
            [tank.mutual, tank.inductance],
          ],
        },
        resistor('copper', 'low', EARTH, tank.coilResistance),
      ];
    default:
      // two tanks coupled by their coils: the source on the first, the detector on the second
      return [
        tuning,
        capacitor('first tuning', 'first', EARTH, tank.firstCapacitance),
        resistor('source', 'source', 'first', source.resistance),
        {
          kind: 'windings',
          name: 'coils',
          windings: [
            { name: 'first coil', a: 'first', b: 'first low' },
            { name: 'coil', a: 'top', b: 'low' },
          ],
          inductance: [
            [tank.inductance, tank.mutual],
            [tank.mutual, tank.inductance],
          ],
        },
        resistor('first copper', 'first low', EARTH, tank.coilResistance),
        resistor('copper', 'low', EARTH, tank.coilResistance),
      ];
  }
}

/** Resistor and bypass on the output; the earpiece hangs on the same node. */
export const resistorLoad = (resistance: number, capacitance: number): AudioCircuit => ({
  elements: [resistor('load', 'output', EARTH, resistance), capacitor('bypass', 'output', EARTH, capacitance)],
  ports: [{ from: EARTH, to: 'output' }],
  output: 'output',
});

/** Two tanks that are not coupled, a junction out of one and another into the other, outputs joined by resistors. */
function balancedCircuit({ tank, source, load }: ReferenceReceiver, law: DescribingFunction): CircuitInTime {
  const side = (name: string, capacitance: number): Element[] => [
    resistor(`source ${name}`, 'source', name, source.resistance),
    {
      kind: 'windings',
      name: `coil ${name}`,
      windings: [{ name: `coil ${name}`, a: name, b: `${name} low` }],
      inductance: [[tank.inductance]],
    },
    resistor(`copper ${name}`, `${name} low`, EARTH, tank.coilResistance),
    capacitor(`tuning ${name}`, name, EARTH, capacitance),
    capacitor(`bypass ${name}`, `${name} return`, EARTH, load.capacitance),
  ];
  const radio: RadioCircuit = {
    elements: [...side('high', tank.highCapacitance), ...side('low', tank.lowCapacitance)],
    source: { node: 'source', impedance: null },
    ports: [
      { from: 'high', to: 'high return' },
      { from: 'low return', to: 'low' },
    ],
  };
  return {
    laws: [law, law],
    radio: () => radio,
    audio: {
      elements: [
        capacitor('bypass 1', 'o1', EARTH, load.capacitance),
        capacitor('bypass 2', 'o2', EARTH, load.capacitance),
        resistor('load 1', 'o1', 'common', load.resistance),
        resistor('load 2', 'o2', 'common', load.resistance),
        resistor('common load', 'common', EARTH, load.commonResistance!),
        capacitor('common bypass', 'common', EARTH, load.commonCapacitance!),
      ],
      ports: [
        { from: EARTH, to: 'o1' },
        { from: 'o2', to: EARTH },
      ],
      output: 'common',
    },
  };
}

export function referenceCircuit(receiver: ReferenceReceiver): CircuitInTime {
  const { detector, load } = receiver;
  const model = detectorModel({ kind: 'junction', junctionCapacitance: 0, nominalTemperature: detector.temperature, ...detector });
  if (receiver.tank.kind === 'balanced') return balancedCircuit(receiver, model.law);
  const radio: RadioCircuit = {
    elements: [...tankElements(receiver), capacitor('bypass', 'return', EARTH, load.capacitance)],
    source: { node: 'source', impedance: null },
    ports: [{ from: 'top', to: 'return' }],
  };
  return { laws: [model.law], radio: () => radio, audio: resistorLoad(load.resistance, load.capacitance) };
}
