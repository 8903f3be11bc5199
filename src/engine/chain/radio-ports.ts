import { drawTogether, EARTH, type Element, Multiport, Network } from '../circuit/index.ts';
import type { DetectorModel } from '../detector/index.ts';
import type { TankModel } from '../tank/index.ts';
import type { Signal } from './signal.ts';

/** Places at which things join a tank. Where the coil is the aerial its source is in the network, and the aerial's port is that of the top. */
const DETECTOR = 0;
const TOP = 1;
const CAPACITOR = 2;
const AERIAL = 3;
const PORTS = 4;

/** Frequencies whose solution is kept: five for each of a dozen stations. */
const KEPT = 64;

/**
 * A tank as its ports show it, the losses of one frequency in it: what is left to do for an angle of the dial, a detector or an aerial is one term each.
 *
 * The network without the variable capacitor is solved once for each frequency. At resonance capacitor and coil all but cancel, which costs as many
 * digits as Q has, of fifteen.
 */
export class RadioPorts {
  readonly #tank: TankModel;
  readonly #loss: number;
  readonly #network: Network;
  readonly #pairs: readonly (readonly [number, number])[];
  readonly #kept = new Map<number, Multiport>();
  readonly #work = new Multiport(PORTS);

  /** @param loss - frequency at which losses are taken [Hz] */
  constructor(tank: TankModel, loss: number) {
    const { elements, hot, cold } = tank.fixed(loss);
    const aerial = tank.aerialIsCoil ? 'top' : tank.aerialNode;
    const emf: Element[] = tank.aerialIsCoil ? [{ kind: 'voltage', name: 'emf', a: 'coil-cold', b: EARTH, re: 1, im: 0 }] : [];
    this.#tank = tank;
    this.#loss = loss;
    this.#network = new Network(drawTogether([...elements, ...emf], [tank.detectorNode, 'top', hot, cold, aerial]));
    const row = (node: string): number => this.#network.node(node);
    this.#pairs = [
      [row(tank.detectorNode), -1],
      [row('top'), -1],
      [row(hot), row(cold)],
      [row(aerial), -1],
    ];
  }

  /** Whole radio half at a frequency and an angle, the source at one volt: open-circuit voltage and impedance where the detector's law lies, to `out` as [Vre, Vim, Zre, Zim]. */
  atDetector(frequency: number, angle: number, detector: DetectorModel, source: Pick<Signal, 'impedance'>, out: Float64Array): void {
    const work = this.#joined(frequency, detector, source);
    const { capacitance, conductance } = this.#tank.turning(this.#loss, angle);
    work.shunt(CAPACITOR, conductance, 2 * Math.PI * frequency * capacitance);
    out[0] = work.vRe[DETECTOR]!;
    out[1] = work.vIm[DETECTOR]!;
    out[2] = work.zRe[DETECTOR * PORTS + DETECTOR]!;
    out[3] = work.zIm[DETECTOR * PORTS + DETECTOR]!;
  }

  /** Admittance across the top of the tank over the angle, aerial joined and the detector at rest, to `out` as [Gre, Bim] [S]. */
  atTop(frequency: number, detector: DetectorModel, source: Pick<Signal, 'impedance'>): (angle: number, out: Float64Array) => void {
    const work = this.#joined(frequency, detector, source);
    work.shunt(DETECTOR, 1 / detector.zeroBiasResistance, 0);
    const z = (i: number, k: number): readonly [number, number] => [work.zRe[i * PORTS + k]!, work.zIm[i * PORTS + k]!];
    const [topRe, topIm] = z(TOP, TOP);
    const [mutualRe, mutualIm] = z(TOP, CAPACITOR);
    const [ownRe, ownIm] = z(CAPACITOR, CAPACITOR);
    const squareRe = mutualRe * mutualRe - mutualIm * mutualIm;
    const squareIm = 2 * mutualRe * mutualIm;
    return (angle, out) => {
      const { capacitance, conductance: g } = this.#tank.turning(this.#loss, angle);
      const b = 2 * Math.PI * frequency * capacitance;
      // y / (1 + y Z_cc)
      const dr = 1 + g * ownRe - b * ownIm;
      const di = g * ownIm + b * ownRe;
      const d = dr * dr + di * di;
      const kr = (g * dr + b * di) / d;
      const ki = (b * dr - g * di) / d;
      const re = topRe - (squareRe * kr - squareIm * ki);
      const im = topIm - (squareRe * ki + squareIm * kr);
      const size = re * re + im * im;
      out[0] = re / size;
      out[1] = -im / size;
    };
  }

  /** All but the variable capacitor, in a place that the next call overwrites. */
  #joined(frequency: number, { numbers }: DetectorModel, { impedance }: Pick<Signal, 'impedance'>): Multiport {
    const work = this.#work;
    work.copyFrom(this.#open(frequency));
    if (numbers.capacitance > 0) {
      const b = 2 * Math.PI * frequency * numbers.capacitance;
      const drop = b * numbers.capacitanceResistance;
      work.shunt(DETECTOR, (b * drop) / (1 + drop * drop), b / (1 + drop * drop));
    }
    if (impedance !== null) {
      const z = impedance(frequency);
      work.drive(AERIAL, z.re, z.im);
    }
    return work;
  }

  #open(frequency: number): Multiport {
    const known = this.#kept.get(frequency);
    if (known) return known;
    if (this.#kept.size >= KEPT) this.#kept.clear();
    const made = new Multiport(PORTS);
    if (!this.#network.multiport(frequency, this.#pairs, made)) throw new Error(`the radio network has no solution at ${frequency} Hz`);
    this.#kept.set(frequency, made);
    return made;
  }
}

const made = new WeakMap<TankModel, Map<number, RadioPorts>>();
/** Frequencies of losses kept for one tank: stations it is tuned to. */
const MOST_LOSSES = 16;

/** The same ports for the same tank: a search puts many detectors, phones and aerials around one. */
export function radioPorts(tank: TankModel, loss: number): RadioPorts {
  let known = made.get(tank);
  if (!known) {
    known = new Map();
    made.set(tank, known);
  }
  let ports = known.get(loss);
  if (!ports) {
    if (known.size >= MOST_LOSSES) known.clear();
    ports = new RadioPorts(tank, loss);
    known.set(loss, ports);
  }
  return ports;
}
