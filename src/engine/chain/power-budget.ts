import { EARTH, type ElementPower, Network, powers } from '../circuit/index.ts';
import type { RestPoint } from './levels.ts';
import type { Receiver } from './receiver.ts';
import { bypassOf, radioElements } from './rf-half.ts';
import type { Signal } from './signal.ts';

/** Where the station's radio power goes at one dial angle [W]. */
export interface PowerBudget {
  /** resistance of the aerial; of the coil with its leads and its radiation where it is the aerial [ohm] */
  readonly sourceResistance: number;
  /** the most the aerial could hand over: emf^2 / (4 R) */
  readonly available: number;
  /** what it hands over to the tank; where the coil is the aerial, to everything but the coil */
  readonly intoTank: number;
  /** what arrives in the detector's law */
  readonly intoDetector: number;
  /** heat in each part of the tank and in the detector's resistance, greatest first */
  readonly parts: readonly ElementPower[];
  /** sum of all powers over the power delivered; zero but for rounding */
  readonly imbalance: number;
}

/** Losses that are the aerial's own where the coil is the aerial; names as TankModel gives them. */
const OF_THE_COIL = /^(coil copper|coil leads|radiation)/;

/**
 * Solves the radio half with the detector's law as the conductance it shows at this level, and adds up the power element by element.
 *
 * Where the coil is the aerial its own copper, leads and radiation are the source's resistance, as a separate aerial's are.
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
  const own = signal.impedance ? [] : network.elements.filter((e) => e.kind === 'resistor' && OF_THE_COIL.test(e.name));
  const sourceResistance = signal.impedance
    ? signal.impedance(f0).re
    : own.reduce((sum, e) => sum + (e.kind === 'resistor' ? e.resistance : 0), 0);
  const parts = all.filter((e) => e.name !== 'emf' && e.name !== 'aerial' && e.name !== 'detector law').sort((a, b) => b.watts - a.watts);
  return {
    sourceResistance,
    available: sourceResistance > 0 ? signal.emf ** 2 / (4 * sourceResistance) : 0,
    intoTank: delivered - watts('aerial') - own.reduce((sum, e) => sum + watts(e.name), 0),
    intoDetector: watts('detector law'),
    parts,
    imbalance: delivered > 0 ? all.reduce((sum, e) => sum + e.watts, 0) / delivered : 0,
  };
}
