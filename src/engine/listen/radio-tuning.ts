import { drawTogether } from '../circuit/index.ts';
import { C, type Complex, straightHold } from '../numeric/index.ts';
import type { RadioCircuit } from './circuit.ts';
import { type Band, emfFilter } from './emf-filter.ts';
import { type CircuitEquations, circuitEquations, conduct, type ModalCircuit, modalResponse, modesOf } from './modal-circuit.ts';
import type { OnePortFit } from './one-port-fit.ts';
import { reactionTaps } from './reaction-taps.ts';

/** A mode is stepped from sample to sample where leaving it out would change a response in the sampled band by more than this share, 0.0004 dB. */
const KEPT = 5e-5;
/** Modes farther away than so many times the sample rate stand still: their share changes by less than a thousandth of itself across the band. */
const REACH = 1000;
/** A mode grows if its real part is above this share of its distance from the reference. */
const GROWING = 1e-9;

/**
 * The radio half at one dial angle, stepped from sample to sample.
 *
 * z_k' = decay_k z_k + sum over p of in_kp u_p + source_k e; the open voltage of port j is d_j = sum over k of out_jk z_k + sum of taps on e, and
 * v_j = d_j - sum over p of zeta_jp u_p, u the radio current of the law beyond its conductance at rest (for a single port also - past_d u of d samples
 * before). All in one array, so that one tuning can pass into another.
 */
export interface RadioTuning {
  readonly modes: number;
  readonly ports: number;
  readonly taps: number;
  /** complex numbers as pairs: for each mode decay, source, in by port, out by port; then zeta by port and port; then past 1 and 2; then taps by port */
  readonly numbers: Float64Array;
  /** of the modes, from the reference [1/s] */
  readonly poles: readonly Complex[];
  /** conductance taken into the circuit at each port [S] */
  readonly conductances: Float64Array;
  /** what the e.m.f. of each station is multiplied by before all are summed [1] */
  readonly gains: Float64Array;
  readonly accuracy: TuningAccuracy;
}

export interface TuningAccuracy {
  /** how the aerial's impedance was fitted, and its error over the band */
  readonly aerialMethod: string | null;
  readonly aerialError: number;
  /** modes stepped, and modes that stand still */
  readonly stepped: number;
  readonly still: number;
  /** by how much the modes that stand still would change a response across the sampled band, by its greatest value */
  readonly stillError: number;
  /** greatest error of the open voltage within each band, by the greatest in the band */
  readonly bandErrors: readonly number[];
}

/** Places in `numbers`. */
export const layout = (modes: number, ports: number, taps: number) => ({
  stride: 4 + 4 * ports,
  decay: 0,
  source: 2,
  into: 4,
  outOf: 4 + 2 * ports,
  zeta: modes * (4 + 4 * ports),
  past: modes * (4 + 4 * ports) + 2 * ports * ports,
  taps: modes * (4 + 4 * ports) + 2 * ports * ports + 4,
  size: modes * (4 + 4 * ports) + 2 * ports * ports + 4 + 2 * ports * taps,
});

/** What stays the same while the dial turns. */
export interface Sampling {
  /** reference frequency [Hz] */
  readonly reference: number;
  /** [Hz] */
  readonly rate: number;
  /** of the stations, from the reference */
  readonly bands: readonly Band[];
  /** on the e.m.f. */
  readonly taps: number;
}

/** A radio circuit's equations: inputs e.m.f. and port currents, outputs port voltages. */
export function radioEquations(circuit: RadioCircuit, fit: OnePortFit | null): CircuitEquations {
  const kept = [circuit.source.node, ...circuit.ports.flatMap((p) => [p.from, p.to])];
  return circuitEquations(drawTogether(circuit.elements, kept), {
    source: { node: circuit.source.node, impedance: fit },
    ports: circuit.ports,
    voltages: circuit.ports,
  });
}

/**
 * Steps a radio circuit from sample to sample.
 *
 * @param equations - of the circuit; the conductances are added to them
 * @param fit - of the aerial's impedance, as it is in the equations
 * @param conductances - what the detectors draw at rest [S]: as part of the circuit it is exact at every frequency
 * @returns null where a mode that would have to be stepped grows, as a fit may bring in
 */
export function radioTuning(
  equations: CircuitEquations,
  fit: OnePortFit | null,
  conductances: Float64Array,
  sampling: Sampling,
): RadioTuning | null {
  const w0 = 2 * Math.PI * sampling.reference;
  const ports = conductances.length;
  conductances.forEach((g, p) => {
    conduct(equations, p + 1, g);
  });
  // the shift stands off the axis so that it never hits a lossless pole
  const modal = modesOf(equations, { re: 0, im: w0 }, { re: 1e-3 * w0, im: w0 }, REACH * sampling.rate);
  if (!modal) throw new Error(`the radio circuit has no solution at ${sampling.reference} Hz`);
  const { kept, stillError } = stepped(modal, ports, sampling.rate);
  // a pole without loss may stand to the right of the axis by its rounding
  if (kept.some((k) => modal.poles[k]!.re > GROWING * C.abs(modal.poles[k]!))) return null;
  return sampled(stillBut(modal, kept), ports, conductances, sampling, fit, { still: modal.poles.length - kept.length, stillError });
}

/** Modes whose share of some response changes across the sampled band, in the order in which they stand. */
function stepped(m: ModalCircuit, ports: number, rate: number): { readonly kept: readonly number[]; readonly stillError: number } {
  const inputs = ports + 1;
  const edge = Math.PI * rate;
  const kept: number[] = [];
  let stillError = 0;
  const size: number[] = [];
  for (let j = 0; j < ports; j++)
    for (let i = 0; i < inputs; i++)
      size.push(Math.max(...[-1, -0.5, 0, 0.5, 1].map((x) => C.abs(modalResponse(m, { re: 0, im: x * edge }, j, i)))));
  m.poles.forEach((p, k) => {
    let most = 0;
    for (let j = 0; j < ports; j++)
      for (let i = 0; i < inputs; i++) {
        const strength = C.mul(m.outOf[k]![j]!, m.into[k]![i]!);
        const middle = C.div(strength, C.neg(p));
        for (const x of [-1, 1]) {
          const there = C.div(strength, C.sub({ re: 0, im: x * edge }, p));
          most = Math.max(most, C.abs(C.sub(there, middle)) / Math.max(size[j * inputs + i]!, Number.MIN_VALUE));
        }
      }
    if (most > KEPT) kept.push(k);
    else stillError += most;
  });
  return { kept, stillError };
}

/** The same circuit with all modes but some standing still at their value at the reference. */
function stillBut(m: ModalCircuit, kept: readonly number[]): ModalCircuit {
  const rest = m.rest.map((row, j) =>
    row.map((h, i) =>
      m.poles.reduce((sum: Complex, p, k) => {
        if (kept.includes(k)) return sum;
        return C.add(sum, C.div(C.mul(m.outOf[k]![j]!, m.into[k]![i]!), C.neg(p)));
      }, h),
    ),
  );
  return { poles: kept.map((k) => m.poles[k]!), into: kept.map((k) => m.into[k]!), outOf: kept.map((k) => m.outOf[k]!), rest };
}

function sampled(
  m: ModalCircuit,
  ports: number,
  conductances: Float64Array,
  sampling: Sampling,
  fit: OnePortFit | null,
  left: Pick<TuningAccuracy, 'still' | 'stillError'>,
): RadioTuning {
  const modes = m.poles.length;
  const count = sampling.taps;
  const at = layout(modes, ports, count);
  const numbers = new Float64Array(at.size);
  const put = (o: number, z: Complex): void => {
    numbers[o] = z.re;
    numbers[o + 1] = z.im;
  };
  const holds = m.poles.map((p) => straightHold({ re: Math.min(p.re, 0), im: p.im }, 1 / sampling.rate));
  const within = m.rest.map((row) => row.slice());
  m.poles.forEach((_, k) => {
    const { decay, before, after } = holds[k]!;
    // z counts the input that drives it most through the first port that does at all as one
    const into = m.into[k]!;
    const largest = Math.max(...into.slice(1).map(C.abs));
    const unit = into.slice(1).find((a) => C.abs(a) > 1e-9 * largest) ?? C.ONE;
    const gain = C.add(before, C.mul(decay, after));
    const o = k * at.stride;
    put(o + at.decay, decay);
    put(o + at.source, C.div(into[0]!, unit));
    for (let p = 0; p < ports; p++) {
      put(o + at.into + 2 * p, C.div(into[p + 1]!, unit));
      put(o + at.outOf + 2 * p, C.mul(C.mul(m.outOf[k]![p]!, unit), gain));
      for (let i = 0; i <= ports; i++) within[p]![i] = C.add(within[p]![i]!, C.mul(C.mul(m.outOf[k]![p]!, into[i]!), after));
    }
  });
  for (let j = 0; j < ports; j++) for (let p = 0; p < ports; p++) put(at.zeta + 2 * (j * ports + p), C.neg(within[j]![p + 1]!));
  const filter = emfFilter(
    Array.from({ length: ports }, (_, j) => ({
      wanted: (f) => modalResponse(m, { re: 0, im: 2 * Math.PI * f }, j, 0),
      modes: (angle) => {
        const z = C.cis(-angle);
        return m.poles.reduce((sum: Complex, _, k) => {
          const o = k * at.stride;
          const out = { re: numbers[o + at.outOf + 2 * j]!, im: numbers[o + at.outOf + 2 * j + 1]! };
          const source = { re: numbers[o + at.source]!, im: numbers[o + at.source + 1]! };
          return C.add(sum, C.mul(out, C.div(C.mul(z, source), C.sub(C.ONE, C.mul(z, holds[k]!.decay)))));
        }, C.ZERO);
      },
    })),
    sampling.bands,
    sampling.rate,
    count,
  );
  filter.taps.forEach((taps, j) => {
    taps.forEach((t, d) => {
      put(at.taps + 2 * (j * count + d), t);
    });
  });
  if (ports === 1) {
    const zeta = C.neg(within[0]![1]!);
    const taps = reactionTaps(
      (f) => C.neg(modalResponse(m, { re: 0, im: 2 * Math.PI * f }, 0, 1)),
      (angle) => {
        const z = C.cis(-angle);
        return m.poles.reduce((sum: Complex, _, k) => {
          const o = k * at.stride + at.outOf;
          return C.sub(sum, C.div(C.mul(z, { re: numbers[o]!, im: numbers[o + 1]! }), C.sub(C.ONE, C.mul(z, holds[k]!.decay))));
        }, zeta);
      },
      conductances[0]!,
      sampling.bands,
      sampling.rate,
    );
    put(at.zeta, C.add(zeta, taps[0]!));
    put(at.past, taps[1]!);
    put(at.past + 2, taps[2]!);
  }
  const accuracy = { aerialMethod: fit?.method ?? null, aerialError: fit?.error ?? 0, stepped: modes, ...left, bandErrors: filter.errors };
  return { modes, ports, taps: count, numbers, poles: m.poles, conductances, gains: Float64Array.from(filter.gains), accuracy };
}
