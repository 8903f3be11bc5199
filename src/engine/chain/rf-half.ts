import { drawTogether, EARTH, type Element, Network, type Node } from '../circuit/index.ts';
import type { DetectorModel } from '../detector/index.ts';
import type { TankModel } from '../tank/index.ts';
import { type RadioPorts, radioPorts } from './radio-ports.ts';
import type { Receiver } from './receiver.ts';
import type { Signal } from './signal.ts';

/** The radio half of a set at one dial angle, seen from the detector's law, its source at one volt. */
export interface RadioSource {
  /** open-circuit voltage for one volt of e.m.f., and source impedance [ohm], as last solved */
  readonly vRe: number;
  readonly vIm: number;
  readonly zRe: number;
  readonly zIm: number;
  /** Solves at a frequency [Hz]; the results stand in the fields. */
  solve(frequency: number): void;
}

/** A radio half as a network of its own. */
export class RfHalf implements RadioSource {
  readonly #network: Network;
  readonly #port: number;
  readonly #bypass: number;
  readonly #out = new Float64Array(4);
  vRe = 0;
  vIm = 0;
  zRe = 0;
  zIm = 0;

  /**
   * @param elements - the radio half with its source
   * @param port - node where the detector hangs
   * @param bypass - capacitor that returns the detector's radio current at its output [F]
   */
  constructor(elements: readonly Element[], port: Node, bypass: number) {
    this.#network = new Network(drawTogether(elements, [port]));
    this.#port = this.#network.node(port);
    this.#bypass = bypass;
  }

  solve(frequency: number): void {
    if (!this.#network.thevenin(frequency, this.#port, this.#out)) throw new Error(`the radio network has no solution at ${frequency} Hz`);
    this.vRe = this.#out[0]!;
    this.vIm = this.#out[1]!;
    this.zRe = this.#out[2]!;
    this.zIm = this.#out[3]! - 1 / (2 * Math.PI * frequency * this.#bypass);
  }
}

/** What the cord of the phones has between its wires where no bypass capacitor is fitted [F]: an estimate, a metre and a half at some 70 pF/m. */
const STRAY_BYPASS = 100e-12;

/** Capacitance that returns the detector's radio current at its output [F]. */
export const bypassOf = (receiver: Receiver): number => Math.max(receiver.set.phones.bypass, STRAY_BYPASS);

/** The radio half of a receiver at an angle, for one station's source; losses are those of frequency `loss` [Hz]. */
export function radioHalf(receiver: Receiver, signal: Pick<Signal, 'impedance'>, angle: number, loss: number): RadioSource {
  return new TurnedHalf(receiver, signal, angle, loss);
}

/** The same out of the ports of the tank, which are solved once for all angles, detectors and aerials. */
class TurnedHalf implements RadioSource {
  readonly #ports: RadioPorts;
  readonly #detector: DetectorModel;
  readonly #signal: Pick<Signal, 'impedance'>;
  readonly #angle: number;
  readonly #bypass: number;
  readonly #out = new Float64Array(4);
  vRe = 0;
  vIm = 0;
  zRe = 0;
  zIm = 0;

  constructor(receiver: Receiver, signal: Pick<Signal, 'impedance'>, angle: number, loss: number) {
    this.#ports = radioPorts(receiver.tank, loss);
    this.#detector = receiver.detector;
    this.#signal = signal;
    this.#angle = angle;
    this.#bypass = bypassOf(receiver);
  }

  solve(frequency: number): void {
    const out = this.#out;
    this.#ports.atDetector(frequency, this.#angle, this.#detector, this.#signal, out);
    this.vRe = out[0]!;
    this.vIm = out[1]!;
    this.zRe = out[2]!;
    this.zIm = out[3]! - 1 / (2 * Math.PI * frequency * this.#bypass);
  }
}

/**
 * The radio half as elements, the station's e.m.f. at one volt.
 *
 * @param loss - frequency at which the losses are taken [Hz]
 */
export function radioElements(
  tank: TankModel,
  detector: DetectorModel,
  signal: Pick<Signal, 'impedance'>,
  angle: number,
  loss: number,
): Element[] {
  const elements: Element[] = [...tank.elements(loss, angle), ...detector.elements(tank.detectorNode)];
  if (signal.impedance === null) elements.push({ kind: 'voltage', name: 'emf', a: 'coil-cold', b: EARTH, re: 1, im: 0 });
  else {
    elements.push({ kind: 'voltage', name: 'emf', a: 'aerial source', b: EARTH, re: 1, im: 0 });
    elements.push({ kind: 'impedance', name: 'aerial', a: 'aerial source', b: tank.aerialNode, at: signal.impedance });
  }
  return elements;
}

/** Points at which the network is solved across a window; between them 1/V and Z/V, nearly straight for a tuned circuit, are interpolated. */
const NODES = 5;
const NODE_X = Float64Array.from({ length: NODES }, (_, j) => Math.cos((Math.PI * j) / (NODES - 1)));
const NODE_WEIGHT = Float64Array.from({ length: NODES }, (_, j) => (j % 2 === 0 ? 1 : -1) * (j === 0 || j === NODES - 1 ? 0.5 : 1));

/**
 * The radio half across a window about a carrier, as functions of x = (f - f0) / half width, -1 to 1.
 *
 * Five solves at Chebyshev points serve every instant of the modulation: barycentric interpolation (Berrut & Trefethen, SIAM Review 46 (2004) 501)
 * of 1/V and Z/V. V and Z have the resonance in the same denominator, so both are polynomials of low degree, however sharp it is. 1/Z would not do: where
 * a tapped tank and the bypass capacitor are in series resonance, Z all but vanishes beside the carrier.
 */
export class Window {
  readonly #y: readonly Float64Array[];
  /** for one volt of e.m.f., as last read */
  vRe = 0;
  vIm = 0;
  zRe = 0;
  zIm = 0;

  constructor(rf: RadioSource, f0: number, halfWidth: number) {
    const y = Array.from({ length: 4 }, () => new Float64Array(NODES));
    for (let j = 0; j < NODES; j++) {
      rf.solve(f0 + halfWidth * NODE_X[j]!);
      const v = Math.max(rf.vRe * rf.vRe + rf.vIm * rf.vIm, 1e-200);
      y[0]![j] = rf.vRe / v;
      y[1]![j] = -rf.vIm / v;
      y[2]![j] = (rf.zRe * rf.vRe + rf.zIm * rf.vIm) / v;
      y[3]![j] = (rf.zIm * rf.vRe - rf.zRe * rf.vIm) / v;
    }
    this.#y = y;
  }

  /** Reads the window at x; the results stand in the fields. */
  read(x: number): void {
    let sum = 0;
    let a = 0;
    let b = 0;
    let c = 0;
    let d = 0;
    for (let j = 0; j < NODES; j++) {
      const gap = x - NODE_X[j]!;
      if (Math.abs(gap) < 1e-12) {
        this.#set(this.#y[0]![j]!, this.#y[1]![j]!, this.#y[2]![j]!, this.#y[3]![j]!);
        return;
      }
      const w = NODE_WEIGHT[j]! / gap;
      sum += w;
      a += w * this.#y[0]![j]!;
      b += w * this.#y[1]![j]!;
      c += w * this.#y[2]![j]!;
      d += w * this.#y[3]![j]!;
    }
    this.#set(a / sum, b / sum, c / sum, d / sum);
  }

  #set(a: number, b: number, c: number, d: number): void {
    const v = a * a + b * b;
    this.vRe = a / v;
    this.vIm = -b / v;
    this.zRe = c * this.vRe - d * this.vIm;
    this.zIm = c * this.vIm + d * this.vRe;
  }
}
