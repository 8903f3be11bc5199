import { EARTH, type ElementPower, Network, powers } from '../circuit/index.ts';
import type { RestPoint } from './levels.ts';
import type { Receiver } from './receiver.ts';
import { bypassOf, radioElements } from './rf-half.ts';
import type { Signal } from './signal.ts';

/** Where the station's radio power goes at one dial angle [W]. */
export interface PowerBudget {
  /** the most the aerial could hand over: emf^2 / (4 R) */
  readonly available: number;
  /** what it hands over to the tank */
  readonly intoTank: number;
  /** what arrives in the detector's law */
  readonly intoDetector: number;
  /** heat in each part of the tank and in the detector's resistance, greatest first */
  readonly parts: readonly ElementPower[];
  /** sum of all powers over the power delivered; zero but for rounding */
  readonly imbalance: number;
}

/**
 * Solves the radio half with the detector's law as the conductance it shows at this level, and adds up the power element by element.
 *
 * Where the coil is the aerial, "available" counts its own loss as the source's, since no loss-free coil is on offer.
 */
export function powerBudget(receiver: Receiver, signal: Signal, angle: number, rest: RestPoint): PowerBudget {
  const { tank, detector } = receiver;
  const f0 = signal.received.station.frequency;
  const network = new Network([
    ...radioElements(tank, detector, signal, angle, f0).map((e) => (e.kind === 'voltage' ? { ...e, re: signal.emf } : e)),
    { kind: 'resistor', name: 'detector law', a: tank.detectorNode, b: 'radio return', resistance: 1 / rest.radioConductance },
    { kind: 'capacitor', name: 'bypass', a: 'radio return', b: EARTH, capacitance: bypassOf(receiver) },
  ]);
  const solution = network.solveAt(f0);
  const all = solution ? powers(network, solution, f0) : [];
  const watts = (name: string): number => all.find((e) => e.name === name)?.watts ?? 0;
  const delivered = -watts('emf');
  const sourceResistance = signal.impedance ? signal.impedance(f0).re : tank.coilResistance(f0);
  const parts = all.filter((e) => e.name !== 'emf' && e.name !== 'aerial' && e.name !== 'detector law').sort((a, b) => b.watts - a.watts);
  return {
    available: sourceResistance > 0 ? signal.emf ** 2 / (4 * sourceResistance) : 0,
    intoTank: delivered - watts('aerial'),
    intoDetector: watts('detector law'),
    parts,
    imbalance: delivered > 0 ? all.reduce((sum, e) => sum + e.watts, 0) / delivered : 0,
  };
}
