import type { Arrival } from '../aerial/index.ts';
import type { Receiver } from './receiver.ts';
import { bypassOf, RfHalf, radioElements } from './rf-half.ts';

/**
 * What the radio half lets through: amplitude across the detector's law for one volt of e.m.f., over frequency.
 *
 * A = |V / (1 + Z g)|, the detector as the conductance it shows at rest.
 *
 * @param arrival - of any station: the aerial's impedance does not depend on it
 * @param angle - of the dial [rad]
 * @param conductance - g [S]
 * @param centre - frequency at which losses are taken [Hz]
 * @param frequencies - [Hz]
 * @returns [V/V], one for each frequency
 */
export function response(
  receiver: Receiver,
  arrival: Arrival,
  angle: number,
  conductance: number,
  centre: number,
  frequencies: Float64Array,
): Float64Array {
  const { aerial, tank, detector } = receiver;
  const source = { impedance: aerial === null ? null : (f: number) => aerial.at(f, arrival).impedance };
  const rf = new RfHalf(radioElements(tank, detector, source, angle, centre), tank.detectorNode, bypassOf(receiver));
  return frequencies.map((f) => {
    rf.solve(f);
    return Math.hypot(rf.vRe, rf.vIm) / Math.hypot(1 + rf.zRe * conductance, rf.zIm * conductance);
  });
}
