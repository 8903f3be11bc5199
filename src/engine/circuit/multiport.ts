/**
 * A linear network as its ports show it: open-circuit voltages and impedances at one frequency, split into real and imaginary parts, impedances row-major.
 *
 * What is joined to a port changes all of them by one term (Sherman and Morrison), so that a dial can be turned or an aerial changed without
 * solving the network again.
 */
export class Multiport {
  readonly ports: number;
  readonly vRe: Float64Array;
  readonly vIm: Float64Array;
  readonly zRe: Float64Array;
  readonly zIm: Float64Array;

  constructor(ports: number) {
    this.ports = ports;
    this.vRe = new Float64Array(ports);
    this.vIm = new Float64Array(ports);
    this.zRe = new Float64Array(ports * ports);
    this.zIm = new Float64Array(ports * ports);
  }

  copyFrom(other: Multiport): void {
    this.vRe.set(other.vRe);
    this.vIm.set(other.vIm);
    this.zRe.set(other.zRe);
    this.zIm.set(other.zIm);
  }

  /** An admittance y across a port [S]: Z - z z^T y / (1 + y Z_pp), V - z y V_p / (1 + y Z_pp), z the column of the port. */
  shunt(port: number, yRe: number, yIm: number): void {
    const own = port * this.ports + port;
    const zr = this.zRe[own]!;
    const zi = this.zIm[own]!;
    const dr = 1 + yRe * zr - yIm * zi;
    const di = yRe * zi + yIm * zr;
    const d = dr * dr + di * di;
    this.#take(port, 0, 0, (yRe * dr + yIm * di) / d, (yIm * dr - yRe * di) / d);
  }

  /** A source of one volt behind an impedance [ohm], across a port. */
  drive(port: number, re: number, im: number): void {
    const own = port * this.ports + port;
    const dr = this.zRe[own]! + re;
    const di = this.zIm[own]! + im;
    const d = dr * dr + di * di;
    this.#take(port, 1, 0, dr / d, -di / d);
  }

  /** Current (V_p - e) k is drawn at a port: voltages and impedances fall by it. */
  #take(port: number, eRe: number, eIm: number, kRe: number, kIm: number): void {
    const { ports: n, vRe, vIm, zRe, zIm } = this;
    const dr = vRe[port]! - eRe;
    const di = vIm[port]! - eIm;
    const ir = dr * kRe - di * kIm;
    const ii = dr * kIm + di * kRe;
    const row = port * n;
    // the network is reciprocal: the column of the port is its row, which is changed last
    for (let i = 0; i < n; i++) {
      const cr = zRe[row + i]!;
      const ci = zIm[row + i]!;
      vRe[i] = vRe[i]! - (cr * ir - ci * ii);
      vIm[i] = vIm[i]! - (cr * ii + ci * ir);
      if (i === port) continue;
      const tr = cr * kRe - ci * kIm;
      const ti = cr * kIm + ci * kRe;
      for (let j = 0; j < n; j++) {
        const at = i * n + j;
        zRe[at] = zRe[at]! - (tr * zRe[row + j]! - ti * zIm[row + j]!);
        zIm[at] = zIm[at]! - (tr * zIm[row + j]! + ti * zRe[row + j]!);
      }
    }
    const or = zRe[row + port]!;
    const oi = zIm[row + port]!;
    const keepRe = 1 - (or * kRe - oi * kIm);
    const keepIm = -(or * kIm + oi * kRe);
    for (let j = 0; j < n; j++) {
      const r = zRe[row + j]!;
      const i = zIm[row + j]!;
      zRe[row + j] = r * keepRe - i * keepIm;
      zIm[row + j] = r * keepIm + i * keepRe;
    }
  }
}
