import { GivenError } from '../given-error.ts';
import { type Complex, LU } from '../numeric/index.ts';
import { EARTH, type Element, type Node } from './elements.ts';
import type { Multiport } from './multiport.ts';

/** A smaller resistance is a branch of its own [ohm]: as a conductance it would swallow the digits of what stands beside it. */
const LEAST_RESISTANCE = 1e-3;

/**
 * A linear network by modified nodal analysis, ready to be solved at any frequency.
 *
 * Unknowns are the node voltages, then one current for each winding, voltage source and given impedance:
 * (G + j w C) x = b. A branch keeps its current as an unknown because then a short (0 V source, 0 ohm) and direct current through
 * an inductor need no special case. Phasors carry the convention of the sources (rms in, rms out).
 *
 * Source: C.-W. Ho, A. Ruehli, P. Brennan, "The modified nodal approach to network analysis", IEEE Trans. CAS-22 (1975) 504.
 */
export class Network {
  readonly elements: readonly Element[];
  /** unknowns */
  readonly size: number;
  readonly #index = new Map<Node, number>();
  readonly #branch = new Map<string, number>();
  readonly #g: Float64Array;
  readonly #c: Float64Array;
  readonly #bRe: Float64Array;
  readonly #bIm: Float64Array;
  readonly #impedances: { readonly row: number; readonly at: (frequency: number) => { readonly re: number; readonly im: number } }[] = [];
  readonly #re: Float64Array;
  readonly #im: Float64Array;
  readonly #pivots: Int32Array;
  readonly #xRe: Float64Array;
  readonly #xIm: Float64Array;

  /** @throws GivenError if an element has a value that no network can hold (not finite, resistance or capacitance below zero) */
  constructor(elements: readonly Element[]) {
    this.elements = elements;
    const names = (e: Element): Node[] => (e.kind === 'windings' ? e.windings.flatMap((w) => [w.a, w.b]) : [e.a, e.b]);
    let n = 0;
    for (const e of elements) for (const name of names(e)) if (name !== EARTH && !this.#index.has(name)) this.#index.set(name, n++);
    for (const e of elements) {
      if (e.kind === 'windings') for (const w of e.windings) this.#branch.set(w.name, n++);
      else if (e.kind === 'voltage' || e.kind === 'impedance' || (e.kind === 'resistor' && e.resistance < LEAST_RESISTANCE))
        this.#branch.set(e.name, n++);
    }
    this.size = n;
    this.#g = new Float64Array(n * n);
    this.#c = new Float64Array(n * n);
    this.#bRe = new Float64Array(n);
    this.#bIm = new Float64Array(n);
    this.#re = new Float64Array(n * n);
    this.#im = new Float64Array(n * n);
    this.#pivots = new Int32Array(n);
    this.#xRe = new Float64Array(n);
    this.#xIm = new Float64Array(n);
    for (const e of elements) this.#stamp(e);
  }

  /** Row of a node among the unknowns, -1 for earth. */
  node(name: Node): number {
    if (name === EARTH) return -1;
    const i = this.#index.get(name);
    if (i === undefined) throw new GivenError('circuit.node', `"${name}"`, 'no element is joined to it', 'Name a node of the network.');
    return i;
  }

  /** The matrices of (G + s C) x = b, row-major, for the search of poles; impedances given by frequency are left out. */
  matrices(): { readonly g: Float64Array; readonly c: Float64Array } {
    return { g: this.#g, c: this.#c };
  }

  /** All voltages and branch currents at a frequency [Hz] with the network's own sources. Null where the network has no single solution. */
  solveAt(frequency: number): Solution | null {
    if (!this.#factorAt(frequency)) return null;
    const re = this.#bRe.slice();
    const im = this.#bIm.slice();
    LU.solve(this.size, this.#re, this.#im, this.#pivots, re, im);
    return new Solution(this.#index, this.#branch, re, im);
  }

  /**
   * Thevenin equivalent between a node and earth: open-circuit voltage (convention of the sources) and impedance [ohm].
   *
   * One factorisation serves both; null where the network is singular. The results are written to `out` as [Vre, Vim, Zre, Zim].
   */
  thevenin(frequency: number, node: number, out: Float64Array): boolean {
    if (!this.#factorAt(frequency)) return false;
    const re = this.#xRe;
    const im = this.#xIm;
    re.set(this.#bRe);
    im.set(this.#bIm);
    LU.solve(this.size, this.#re, this.#im, this.#pivots, re, im);
    out[0] = re[node]!;
    out[1] = im[node]!;
    re.fill(0);
    im.fill(0);
    re[node] = 1;
    LU.solve(this.size, this.#re, this.#im, this.#pivots, re, im);
    out[2] = re[node]!;
    out[3] = im[node]!;
    return true;
  }

  /**
   * Voltages and impedances at some pairs of nodes, by the convention of the sources [V], [ohm]: one factorisation serves all.
   *
   * @param pairs - rows of the two nodes of each port, as `node` gives them
   * @param out - receives them; it has as many ports
   * @returns false where the network is singular
   */
  multiport(frequency: number, pairs: readonly (readonly [number, number])[], out: Multiport): boolean {
    if (!this.#factorAt(frequency)) return false;
    const re = this.#xRe;
    const im = this.#xIm;
    const across = (x: Float64Array, [a, b]: readonly [number, number]): number => (a < 0 ? 0 : x[a]!) - (b < 0 ? 0 : x[b]!);
    re.set(this.#bRe);
    im.set(this.#bIm);
    LU.solve(this.size, this.#re, this.#im, this.#pivots, re, im);
    pairs.forEach((p, i) => {
      out.vRe[i] = across(re, p);
      out.vIm[i] = across(im, p);
    });
    pairs.forEach(([a, b], k) => {
      re.fill(0);
      im.fill(0);
      if (a >= 0) re[a] = 1;
      if (b >= 0) re[b] = -1;
      LU.solve(this.size, this.#re, this.#im, this.#pivots, re, im);
      pairs.forEach((p, i) => {
        out.zRe[i * pairs.length + k] = across(re, p);
        out.zIm[i * pairs.length + k] = across(im, p);
      });
    });
    return true;
  }

  #factorAt(frequency: number): boolean {
    const w = 2 * Math.PI * frequency;
    const n2 = this.size * this.size;
    this.#re.set(this.#g);
    for (let i = 0; i < n2; i++) this.#im[i] = w * this.#c[i]!;
    for (const { row, at } of this.#impedances) {
      const z = at(frequency);
      const k = row * this.size + row;
      this.#re[k] = this.#re[k]! - z.re;
      this.#im[k] = this.#im[k]! - z.im;
    }
    return LU.factor(this.size, this.#re, this.#im, this.#pivots);
  }

  #stamp(e: Element): void {
    switch (e.kind) {
      case 'resistor':
        // an endless resistance is an open circuit: what a loss of next to nothing comes to across a tank
        if (e.resistance === Number.POSITIVE_INFINITY) return;
        check(e.name, 'resistance', e.resistance, 'ohm');
        if (e.resistance < LEAST_RESISTANCE) {
          const row = this.#branch.get(e.name)!;
          this.#stampBranch(row, e.a, e.b);
          this.#g[row * this.size + row] = this.#g[row * this.size + row]! - e.resistance;
        } else this.#stampAdmittance(this.#g, e.a, e.b, 1 / e.resistance);
        return;
      case 'capacitor':
        check(e.name, 'capacitance', e.capacitance, 'F');
        this.#stampAdmittance(this.#c, e.a, e.b, e.capacitance);
        return;
      case 'windings':
        e.windings.forEach((w, i) => {
          const row = this.#branch.get(w.name)!;
          this.#stampBranch(row, w.a, w.b);
          const own = row * this.size + row;
          if (w.resistance) this.#g[own] = this.#g[own]! - w.resistance;
          e.windings.forEach((v, k) => {
            const l = e.inductance[i]?.[k];
            if (l === undefined || !Number.isFinite(l))
              throw new GivenError(
                `circuit.${e.name}`,
                `${l} H`,
                'the inductance matrix needs a finite number for each pair',
                'Give all of them.',
              );
            const at = row * this.size + this.#branch.get(v.name)!;
            this.#c[at] = this.#c[at]! - l;
          });
        });
        return;
      case 'impedance': {
        const row = this.#branch.get(e.name)!;
        this.#stampBranch(row, e.a, e.b);
        this.#impedances.push({ row, at: e.at });
        return;
      }
      case 'voltage': {
        const row = this.#branch.get(e.name)!;
        this.#stampBranch(row, e.a, e.b);
        this.#bRe[row] = e.re;
        this.#bIm[row] = e.im;
        return;
      }
      case 'current': {
        const a = this.node(e.a);
        const b = this.node(e.b);
        if (a >= 0) {
          this.#bRe[a] = this.#bRe[a]! + e.re;
          this.#bIm[a] = this.#bIm[a]! + e.im;
        }
        if (b >= 0) {
          this.#bRe[b] = this.#bRe[b]! - e.re;
          this.#bIm[b] = this.#bIm[b]! - e.im;
        }
        return;
      }
    }
  }

  /** Branch row: va - vb - (drop) = source; its current leaves a and enters b. */
  #stampBranch(row: number, a: Node, b: Node): void {
    const n = this.size;
    const ia = this.node(a);
    const ib = this.node(b);
    if (ia >= 0) {
      this.#g[row * n + ia] = this.#g[row * n + ia]! + 1;
      this.#g[ia * n + row] = this.#g[ia * n + row]! + 1;
    }
    if (ib >= 0) {
      this.#g[row * n + ib] = this.#g[row * n + ib]! - 1;
      this.#g[ib * n + row] = this.#g[ib * n + row]! - 1;
    }
  }

  #stampAdmittance(m: Float64Array, a: Node, b: Node, y: number): void {
    const n = this.size;
    const ia = this.node(a);
    const ib = this.node(b);
    if (ia >= 0) m[ia * n + ia] = m[ia * n + ia]! + y;
    if (ib >= 0) m[ib * n + ib] = m[ib * n + ib]! + y;
    if (ia >= 0 && ib >= 0) {
      m[ia * n + ib] = m[ia * n + ib]! - y;
      m[ib * n + ia] = m[ib * n + ia]! - y;
    }
  }
}

function check(name: string, what: string, value: number, unit: string): void {
  if (!(value >= 0 && value < Number.POSITIVE_INFINITY))
    throw new GivenError(
      `circuit.${name}`,
      `${value} ${unit}`,
      `a ${what} is a finite number, zero or above`,
      'Leave the element out if it is absent.',
    );
}

/** Voltages and branch currents of one solve. */
export class Solution {
  readonly #index: ReadonlyMap<Node, number>;
  readonly #branch: ReadonlyMap<string, number>;
  readonly #re: Float64Array;
  readonly #im: Float64Array;

  constructor(index: ReadonlyMap<Node, number>, branch: ReadonlyMap<string, number>, re: Float64Array, im: Float64Array) {
    this.#index = index;
    this.#branch = branch;
    this.#re = re;
    this.#im = im;
  }

  /** Voltage of a node against earth. */
  voltage(node: Node): Complex {
    if (node === EARTH) return { re: 0, im: 0 };
    const i = this.#index.get(node)!;
    return { re: this.#re[i]!, im: this.#im[i]! };
  }

  /** Whether the current through an element is an unknown of its own: windings, voltage sources, given impedances, very small resistors. */
  isBranch(name: string): boolean {
    return this.#branch.has(name);
  }

  /** Current through a branch, from a to b. */
  current(name: string): Complex {
    const i = this.#branch.get(name)!;
    return { re: this.#re[i]!, im: this.#im[i]! };
  }
}
