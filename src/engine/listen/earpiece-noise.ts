import { EARTH } from '../circuit/index.ts';
import { BOLTZMANN } from '../constants.ts';
import { fourierTransform } from '../numeric/index.ts';
import type { AudioCircuit } from './circuit.ts';
import { RealNoise } from './complex-noise.ts';
import { circuitEquations, conduct, solveAll } from './modal-circuit.ts';

const SIZE = 1024;

/**
 * Thermal noise across the earpiece.
 *
 * S = 4 k T Re Z, Z between the earpiece's terminals with the detectors' conductances in place: exact for all that is passive and of one temperature,
 * detectors near no bias included (Nyquist). White noise from a seed through a linear-phase filter of 1024 taps whose square is S.
 * Source: H. Nyquist, Phys. Rev. 32 (1928) 110.
 */
export class EarpieceNoise {
  readonly #taps = new Float64Array(SIZE);
  readonly #past = new Float64Array(2 * SIZE);
  readonly #white: RealNoise;
  #at = 0;

  constructor(seed: number) {
    this.#white = new RealNoise(seed);
    for (let k = 0; k < SIZE; k++) this.#past[k] = this.#white.next();
    this.#past.copyWithin(SIZE, 0, SIZE);
  }

  /**
   * @param conductances - of the detectors' outputs at rest [S]
   * @param temperature - [K]
   * @param rate - of the samples [Hz]
   */
  shape(circuit: AudioCircuit, conductances: Float64Array, temperature: number, rate: number): void {
    const equations = circuitEquations(circuit.elements, {
      ports: [...circuit.ports, { from: EARTH, to: circuit.output }],
      voltages: [{ from: circuit.output, to: EARTH }],
    });
    conductances.forEach((g, p) => {
      conduct(equations, p, g);
    });
    const re = new Float64Array(SIZE);
    const im = new Float64Array(SIZE);
    for (let k = 0; k <= SIZE / 2; k++) {
      // at 0 Hz a blocked earpiece has next to no resistance to speak of; half a step up it is what it is
      const frequency = (Math.max(k, 0.5) * rate) / SIZE;
      const factored = equations.pencil.factorAt({ re: 0, im: 2 * Math.PI * frequency });
      const resistance = factored ? solveAll(factored, equations)[0]!.at(-1)!.re : 0;
      // unit white noise has 2/rate in each hertz
      re[k] = Math.sqrt((4 * BOLTZMANN * temperature * Math.max(0, resistance) * rate) / 2);
      if (k > 0 && k < SIZE / 2) re[SIZE - k] = re[k]!;
    }
    fourierTransform(SIZE).inverse(re, im);
    for (let k = 0; k < SIZE; k++) {
      // the response centred, under Hann's window
      const window = 0.5 + 0.5 * Math.cos((2 * Math.PI * (k - SIZE / 2)) / SIZE);
      this.#taps[k] = re[(k + SIZE / 2) % SIZE]! * window;
    }
  }

  /** Adds the samples that follow [V]. */
  add(out: Float64Array): void {
    const past = this.#past;
    for (let n = 0; n < out.length; n++) {
      // written twice, so that the last SIZE samples always stand in one piece
      const fresh = this.#white.next();
      past[this.#at] = fresh;
      past[this.#at + SIZE] = fresh;
      this.#at = (this.#at + 1) % SIZE;
      let a = 0;
      let b = 0;
      for (let k = 0; k < SIZE; k += 2) {
        a += this.#taps[k]! * past[this.#at + k]!;
        b += this.#taps[k + 1]! * past[this.#at + k + 1]!;
      }
      out[n] = out[n]! + a + b;
    }
  }
}
