import type { Arrival } from '../aerial/index.ts';
import { bypassOf, type Receiver } from '../chain/index.ts';
import { drawTogether, EARTH, type Element, type Node } from '../circuit/index.ts';
import type { CircuitInTime, Port } from './circuit.ts';

const RETURN: Node = 'detector return';
const OUTPUT: Node = 'output';
const EARPIECE: Node = 'earpiece';
const DIRECT_PATH: Node = 'direct path';
/** Resistance that stands for "no path at all", as in the chain's audio half [ohm]. */
const OPEN = 1e12;

/**
 * A receiver as circuits for the time engine.
 *
 * Radio: tank, detector capacitance, and the bypass in which the detector's radio current returns. Audio: phones, with the tank's resistance to
 * direct current in the detector's path. The losses are those of the reference frequency. An angle beyond the dial's end is that end.
 *
 * @param arrival - where the wanted station's wave comes from: the aerial's impedance does not depend on it
 */
export function receiverCircuit(receiver: Receiver, arrival: Arrival): CircuitInTime {
  const { tank, detector, phones, aerial } = receiver;
  const port: Port = { from: tank.detectorNode, to: RETURN };
  const node = aerial === null ? 'coil-cold' : tank.aerialNode;
  const impedance = aerial === null ? null : (f: number) => aerial.at(f, arrival).impedance;
  const direct = tank.directResistance;
  const from = direct > 0 ? DIRECT_PATH : EARTH;
  const path: Element[] = direct > 0 ? [{ kind: 'resistor', name: DIRECT_PATH, a: DIRECT_PATH, b: EARTH, resistance: direct }] : [];
  return {
    laws: [detector.law],
    radio: (angle, reference) => ({
      elements: drawTogether(
        [
          ...tank.elements(reference, Math.min(Math.max(angle, 0), tank.rotation)),
          ...detector.elements(tank.detectorNode),
          { kind: 'capacitor', name: 'bypass', a: RETURN, b: EARTH, capacitance: bypassOf(receiver) },
        ],
        [node, port.from, port.to],
      ),
      source: { node, impedance },
      ports: [port],
    }),
    audio: {
      elements: [
        ...phones.elements,
        { kind: 'resistor', name: 'open', a: OUTPUT, b: EARTH, resistance: OPEN },
        { kind: 'resistor', name: 'open earpiece', a: EARPIECE, b: EARTH, resistance: OPEN },
        ...path,
      ],
      ports: [{ from, to: OUTPUT }],
      output: EARPIECE,
    },
  };
}
