import { C, type Complex } from '../numeric/index.ts';
import type { CircuitInTime } from './circuit.ts';
import { CoupledDetectors } from './coupled-detectors.ts';
import { type CircuitEquations, solveAll } from './modal-circuit.ts';
import type { OnePortFit } from './one-port-fit.ts';
import { type RadioTuning, radioEquations, radioTuning, type Sampling } from './radio-tuning.ts';
import { type RestBias, restBias } from './rest-bias.ts';

/** A carrier as far as the bias goes. */
export interface RestCarrier {
  /** [Hz] */
  readonly frequency: number;
  /** [V rms] */
  readonly emf: number;
}

/** A set at one angle of its dial. */
export interface TunedSet {
  readonly angle: number;
  readonly tuning: RadioTuning;
  readonly bias: RestBias;
}

/** Makes tunings of one circuit; what does not turn with the dial is kept. */
export class Tuner {
  readonly #circuit: CircuitInTime;
  readonly #fits: readonly (OnePortFit | null)[];
  readonly #sampling: Sampling;
  readonly #carriers: readonly RestCarrier[];
  readonly #steady: Float64Array;
  readonly #detectors: CoupledDetectors;

  /** @param steady - resistance of the audio side to direct current, by port and port [ohm] */
  constructor(
    circuit: CircuitInTime,
    fits: readonly (OnePortFit | null)[],
    sampling: Sampling,
    carriers: readonly RestCarrier[],
    steady: Float64Array,
  ) {
    this.#circuit = circuit;
    this.#fits = fits;
    this.#sampling = sampling;
    this.#carriers = carriers;
    this.#steady = steady;
    this.#detectors = new CoupledDetectors(circuit.laws);
  }

  /** Tuning and bias at an angle [rad]. */
  at(angle: number): TunedSet {
    const radio = this.#circuit.radio(angle, this.#sampling.reference);
    for (const fit of this.#fits) {
      const equations = radioEquations(radio, fit);
      const open = this.#carriers.map((c) => response(equations, c.frequency).map((row) => C.scale(row[0]!, Math.SQRT2 * c.emf)));
      // a port's current flows out of it: its impedance is minus the response
      const impedances = response(equations, this.#sampling.reference).map((row) => row.slice(1).map(C.neg));
      const bias = restBias(this.#detectors, open, impedances, this.#steady);
      const tuning = radioTuning(equations, fit, bias.conductances, this.#sampling);
      if (tuning) return { angle, tuning, bias };
    }
    throw new Error('every fit of the aerial makes the radio circuit grow');
  }
}

/** Port voltages for one volt of e.m.f. and for one ampere into each port, at a frequency [Hz]. */
function response(equations: CircuitEquations, frequency: number): Complex[][] {
  const factored = equations.pencil.factorAt({ re: 0, im: 2 * Math.PI * frequency });
  if (!factored) throw new Error(`the radio circuit has no solution at ${frequency} Hz`);
  return solveAll(factored, equations);
}
