import { Network } from '../circuit/index.ts';
import { brent, C, type Complex } from '../numeric/index.ts';
import { radioPorts } from './radio-ports.ts';
import type { Receiver } from './receiver.ts';
import { radioElements } from './rf-half.ts';
import type { Signal } from './signal.ts';

/** The tank at resonance on a carrier, everything joined to it. */
export interface Resonance {
  /** dial angle from minimum capacitance [rad] */
  readonly angle: number;
  /** conductance across the top of the tank there, detector at rest and aerial included [S] */
  readonly conductance: number;
  /** change of angle that detunes by half the bandwidth: x = 1 [rad] */
  readonly halfWidth: number;
}

/** Why a carrier is out of reach: susceptance left over at the end of the dial, as the capacitance that would mend it [F]; its sign says which way. */
export interface OutOfReach {
  /** positive: so much capacitance is missing at maximum; negative: so much is too much at minimum */
  readonly missing: number;
}

/** Admittance across the top of the tank, aerial joined and detector at rest [S]. */
export function topAdmittance(receiver: Receiver, source: Pick<Signal, 'impedance'>, angle: number, frequency: number): Complex {
  const { tank, detector } = receiver;
  const network = new Network([
    ...radioElements(tank, detector, source, angle, frequency),
    { kind: 'resistor', name: 'detector at rest', a: tank.detectorNode, b: 'earth', resistance: detector.zeroBiasResistance },
  ]);
  const out = new Float64Array(4);
  network.thevenin(frequency, network.node('top'), out);
  return C.div({ re: 1, im: 0 }, { re: out[2]!, im: out[3]! });
}

/**
 * Angle at which the set resonates on a carrier, or on any other frequency with a source that is good there.
 *
 * The susceptance at the top of the tank is the capacitor's, which rises with its capacitance, plus that of everything else, which does not
 * move with the dial; so there is one root, or none on this dial. The detector stands in at its resistance at rest.
 */
export function resonance(receiver: Receiver, signal: Signal): Resonance | OutOfReach {
  return resonanceAt(receiver, signal, signal.received.station.frequency);
}

export function resonanceAt(receiver: Receiver, source: Pick<Signal, 'impedance'>, f0: number): Resonance | OutOfReach {
  const { tank } = receiver;
  const w = 2 * Math.PI * f0;
  const top = radioPorts(tank, f0).atTop(f0, receiver.detector, source);
  const y = new Float64Array(2);
  const susceptance = (angle: number): number => {
    top(angle, y);
    return y[1]!;
  };
  const end = tank.rotation;
  // a dial may run either way: capacitance decides which end is which
  const low = susceptance(0);
  const high = susceptance(end);
  const angle = brent(susceptance, 0, end, 1e-9 * end);
  if (angle === null) return { missing: Math.abs(low) < Math.abs(high) ? -low / w : -high / w };
  susceptance(angle);
  const loaded = y[0]!;
  const step = 1e-4 * end;
  const a0 = Math.max(0, angle - step);
  const a1 = Math.min(end, angle + step);
  const slope = Math.abs(susceptance(a1) - susceptance(a0)) / (a1 - a0);
  return { angle, conductance: loaded, halfWidth: loaded / slope };
}
