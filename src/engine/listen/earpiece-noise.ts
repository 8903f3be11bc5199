import { EARTH } from '../circuit/index.ts';
import { BOLTZMANN } from '../constants.ts';
import { Convolution, fourierTransform, GaussianNoise } from '../numeric/index.ts';
import type { AudioCircuit } from './circuit.ts';
import { circuitEquations, conduct, solveAll } from './modal-circuit.ts';

const SIZE = 1024;

/**
 * Thermal noise across the earpiece.
 *
 * S = 4 k T Re Z, Z between the earpiece's terminals with the detectors' conductances in place: exact for all that is passive and of one temperature,
 * detectors near no bias included (Nyquist). White noise from a seed through a linear-phase filter of 1024 taps whose square is S. The block asked for
 * never changes the result.
 * Source: H. Nyquist, Phys. Rev. 32 (1928) 110.
 */
export class EarpieceNoise {
  readonly #white: GaussianNoise;
  /** white noise: the samples that went by last, and as many drawn ahead */
  readonly #samples = new Float64Array(2 * SIZE);
  readonly #shaped = new Float64Array(SIZE);
  #filter = new Convolution(new Float64Array(SIZE));
  /** filters that are to follow, and from which sample on, in order */
  readonly #later: { readonly from: number; readonly taps: Float64Array }[] = [];
  /** samples given so far, and of those drawn ahead */
  #given = 0;
  #at = 0;

  constructor(seed: number) {
    this.#white = new GaussianNoise(seed);
    this.#white.next(this.#samples);
  }

  /**
   * @param conductances - of the detectors' outputs at rest [S]
   * @param temperature - [K]
   * @param rate - of the samples [Hz]
   * @param from - sample from which on the noise is so
   */
  shape(circuit: AudioCircuit, conductances: Float64Array, temperature: number, rate: number, from: number): void {
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
    // the response centred, under Hann's window
    const taps = Float64Array.from(
      { length: SIZE },
      (_, k) => re[(k + SIZE / 2) % SIZE]! * (0.5 - 0.5 * Math.cos((2 * Math.PI * k) / SIZE)),
    );
    this.#later.push({ from, taps });
  }

  /** Adds the samples that follow [V]. */
  add(out: Float64Array): void {
    for (let n = 0; n < out.length; ) {
      while (this.#later.length > 0 && this.#later[0]!.from <= this.#given) this.#take(this.#later.shift()!.taps);
      const turn = this.#later[0]?.from ?? Number.POSITIVE_INFINITY;
      const count = Math.min(out.length - n, SIZE - this.#at, turn - this.#given);
      const from = SIZE + this.#at;
      this.#filter.process(this.#samples.subarray(from, from + count), this.#shaped);
      for (let k = 0; k < count; k++) out[n + k] = out[n + k]! + this.#shaped[k]!;
      n += count;
      this.#given += count;
      this.#at += count;
      if (this.#at < SIZE) continue;
      this.#samples.copyWithin(0, SIZE);
      this.#white.next(this.#samples.subarray(SIZE));
      this.#at = 0;
    }
  }

  /** Another filter, which has heard what went by. */
  #take(taps: Float64Array): void {
    this.#filter = new Convolution(taps);
    this.#filter.process(this.#samples.subarray(this.#at, SIZE + this.#at), this.#shaped);
  }
}
