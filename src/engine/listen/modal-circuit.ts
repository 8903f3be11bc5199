import { EARTH, type Element, Network, type Node } from '../circuit/index.ts';
import { C, type Complex, type ComplexVector, type Factored, type Mode, Pencil, pencilModes } from '../numeric/index.ts';
import type { Port } from './circuit.ts';
import type { OnePortFit } from './one-port-fit.ts';

/** A linear circuit with its inputs and outputs, as matrices (G + s E) x = sum of b_i u_i, y_j = o_j^T x. */
export interface CircuitEquations {
  readonly pencil: Pencil;
  readonly inputs: readonly ComplexVector[];
  readonly outputs: readonly ComplexVector[];
}

/** What is asked of a circuit. */
export interface Terminals {
  /** e.m.f. against earth behind an impedance (null: none), the first input; absent where there is no e.m.f. */
  readonly source?: { readonly node: Node; readonly impedance: OnePortFit | null };
  /** each is an input, one ampere that leaves the circuit at `from` and comes back at `to` */
  readonly ports: readonly Port[];
  /** voltages asked for, from the first node to the second */
  readonly voltages: readonly Port[];
}

/** Writes the equations of a network of elements, of which none may be an impedance given by frequency. */
export function circuitEquations(elements: readonly Element[], terminals: Terminals): CircuitEquations {
  const network = new Network(elements);
  const { g, c } = network.matrices();
  const n = network.size;
  const { source, ports, voltages } = terminals;
  const branch = n;
  const size = n + (source ? 1 + (source.impedance?.unknowns ?? 0) : 0);
  const pencil = new Pencil(size);
  for (let i = 0; i < n; i++) for (let k = 0; k < n; k++) pencil.add(i, k, { re: g[i * n + k]!, im: 0 }, { re: c[i * n + k]!, im: 0 });
  const vector = (): { re: Float64Array; im: Float64Array } => ({ re: new Float64Array(size), im: new Float64Array(size) });
  const put = (x: ComplexVector, node: Node, value: number): void => {
    if (node !== EARTH) x.re[network.node(node)] = x.re[network.node(node)]! + value;
  };
  const inputs: ComplexVector[] = [];
  if (source) {
    // V = e - Z I, I flowing into the node
    const node = network.node(source.node);
    pencil.add(node, branch, { re: -1, im: 0 }, C.ZERO);
    pencil.add(branch, node, C.ONE, C.ZERO);
    source.impedance?.stamp(pencil, branch, branch + 1);
    const b = vector();
    b.re[branch] = 1;
    inputs.push(b);
  }
  for (const p of ports) {
    const b = vector();
    put(b, p.from, -1);
    put(b, p.to, 1);
    inputs.push(b);
  }
  const outputs = voltages.map((p) => {
    const o = vector();
    put(o, p.from, 1);
    put(o, p.to, -1);
    return o;
  });
  return { pencil, inputs, outputs };
}

/** Puts a conductance [S] across the port of an input: G + g b b^T. */
export function conduct({ pencil, inputs }: CircuitEquations, input: number, conductance: number): void {
  const { re } = inputs[input]!;
  for (let i = 0; i < re.length; i++)
    for (let k = 0; k < re.length; k++)
      if (re[i] !== 0 && re[k] !== 0) pencil.add(i, k, { re: conductance * re[i]! * re[k]!, im: 0 }, C.ZERO);
}

/**
 * A circuit by its natural modes about a frequency.
 *
 * y_j(s) = sum of c_jk a_ki/(s - p_k) u_i + rest_ji: modes within reach are kept whole; all others, and the algebraic equations, stand still at their value at
 * the reference, so that the response there is exact.
 */
export interface ModalCircuit {
  /** poles about the reference: p_k - j w0 [1/s] */
  readonly poles: readonly Complex[];
  /** a_ki, mode by mode, input by input */
  readonly into: readonly (readonly Complex[])[];
  /** c_jk, mode by mode, output by output */
  readonly outOf: readonly (readonly Complex[])[];
  /** what the modes that stand still give, output by output, input by input */
  readonly rest: readonly (readonly Complex[])[];
}

/** Shares by which the energy stores are moved, each by its own multiple, where two poles coincide. */
const NUDGES = [0, 1e-9, 1e-7];

/**
 * The natural modes of a circuit.
 *
 * Two poles may coincide so closely that their vectors cannot be told apart; then E becomes D E D, D diagonal and off one by parts in a thousand million, or
 * in ten million: all stores stay passive, and the response moves by no more than that times the Q of the mode.
 *
 * @param reference - point at which the response is exact [1/s]
 * @param shift - point about which poles are looked for, within `reach` of it [1/s]
 * @returns null where the circuit has no single solution at the reference
 */
export function modesOf(equations: CircuitEquations, reference: Complex, shift: Complex, reach: number): ModalCircuit | null {
  const { inputs, outputs } = equations;
  for (const nudge of NUDGES) {
    const pencil = nudge === 0 ? equations.pencil : nudged(equations.pencil, nudge);
    const modes = pencilModes(pencil, shift, reach);
    const factored = pencil.factorAt(reference);
    if (!modes || !factored) continue;
    const into = modes.map((m) => inputs.map((b) => dot(m.left, b)));
    const outOf = modes.map((m) => outputs.map((o) => dot(o, m.right)));
    const full = solveAll(factored, equations);
    const rest = full.map((row, j) => row.map((h, i) => C.sub(h, modeSum(modes, into, outOf, reference, j, i))));
    return { poles: modes.map((m) => C.sub(m.pole, reference)), into, outOf, rest };
  }
  return null;
}

function nudged(pencil: Pencil, share: number): Pencil {
  const n = pencil.size;
  const moved = new Pencil(n);
  moved.gRe.set(pencil.gRe);
  moved.gIm.set(pencil.gIm);
  for (let i = 0; i < n; i++)
    for (let k = 0; k < n; k++) {
      const factor = (1 + share * (i + 1)) * (1 + share * (k + 1));
      moved.eRe[i * n + k] = pencil.eRe[i * n + k]! * factor;
      moved.eIm[i * n + k] = pencil.eIm[i * n + k]! * factor;
    }
  return moved;
}

function modeSum(
  modes: readonly Mode[],
  into: readonly (readonly Complex[])[],
  outOf: readonly (readonly Complex[])[],
  s: Complex,
  j: number,
  i: number,
): Complex {
  return modes.reduce((sum: Complex, m, k) => C.add(sum, C.div(C.mul(outOf[k]![j]!, into[k]![i]!), C.sub(s, m.pole))), C.ZERO);
}

/** The full response, output by output, input by input. */
export function solveAll(factored: Factored, { inputs, outputs }: CircuitEquations): Complex[][] {
  const x = inputs.map((b) => {
    const copy = { re: b.re.slice(), im: b.im.slice() };
    factored.solve(copy);
    return copy;
  });
  return outputs.map((o) => x.map((v) => dot(o, v)));
}

/** The response by the modes, at s about the reference. */
export function modalResponse(m: ModalCircuit, s: Complex, output: number, input: number): Complex {
  return m.poles.reduce(
    (sum, p, k) => C.add(sum, C.div(C.mul(m.outOf[k]![output]!, m.into[k]![input]!), C.sub(s, p))),
    m.rest[output]![input]!,
  );
}

function dot(a: ComplexVector, b: ComplexVector): Complex {
  let re = 0;
  let im = 0;
  for (let k = 0; k < a.re.length; k++) {
    re += a.re[k]! * b.re[k]! - a.im[k]! * b.im[k]!;
    im += a.re[k]! * b.im[k]! + a.im[k]! * b.re[k]!;
  }
  return { re, im };
}
