import type { NeighbourCoupling } from './turn-coupling.ts';
import type { WireResponse } from './wire-response.ts';

/**
 * The fields of a row of wires while it is being solved.
 *
 * Even orders go as cos m alpha and odd ones as sin m alpha, alpha being counted from the axis of the row, so that sin points outward from the
 * axis of a coil. Everything is scaled to the wire's surface and to j omega mu0 / (2 pi); complex numbers are split.
 */
export interface RowField {
  readonly count: number;
  readonly orders: number;
  /** wire radius over ring radius, 0 if straight */
  readonly bend: number;
  /** its square, for the terms of second order; 0 for magnetic wire, where those are not known */
  readonly bend2: number;
  readonly mirror: 1 | -1;
  readonly wire: WireResponse;
  readonly couplings: readonly NeighbourCoupling[];
  /** multipole strengths at [wire * (orders + 1) + m] */
  readonly evenRe: Float64Array;
  readonly evenIm: Float64Array;
  readonly oddRe: Float64Array;
  readonly oddIm: Float64Array;
  /** plane current of each wire: integral of sqrt(rho) J over the section */
  readonly sourceRe: Float64Array;
  readonly sourceIm: Float64Array;
  /** what meets the wire in hand, by order, and its voltage in `meetVoltage` */
  readonly meetEvenRe: Float64Array;
  readonly meetEvenIm: Float64Array;
  readonly meetOddRe: Float64Array;
  readonly meetOddIm: Float64Array;
  /** real and imaginary part */
  readonly meetVoltage: Float64Array;
}

/** Field and voltage that meet wire i, from all the others and, for a ring, from its own curvature. */
export function meetField(f: RowField, i: number): void {
  f.meetEvenRe.fill(0);
  f.meetEvenIm.fill(0);
  f.meetOddRe.fill(0);
  f.meetOddIm.fill(0);
  f.meetVoltage.fill(0);
  for (let n = 1; n < f.count; n++) {
    const coupling = f.couplings[n - 1]!;
    if (i - n >= 0) {
      addStraight(f, coupling, i - n, 1);
      if (f.bend > 0) addRing(f, coupling, i - n, 1);
    }
    if (i + n < f.count) {
      addStraight(f, coupling, i + n, -1);
      if (f.bend > 0) addRing(f, coupling, i + n, -1);
    }
  }
  if (f.bend > 0) addOwnCurvature(f, i);
}

/** Lets wire i answer the field that meets it, and its mirror image with it; returns how much the answer moved, squared. */
export function answerField(f: RowField, i: number): number {
  const { orders, bend, bend2, mirror, wire, evenRe, evenIm, oddRe, oddIm, meetEvenRe, meetEvenIm, meetOddRe, meetOddIm } = f;
  const at = i * (orders + 1);
  const magneticRe = bend * (wire.magneticRe * f.sourceRe[i]! - wire.magneticIm * f.sourceIm[i]!);
  const magneticIm = bend * (wire.magneticRe * f.sourceIm[i]! + wire.magneticIm * f.sourceRe[i]!);
  const image = f.count - 1 - i;
  const to = image * (orders + 1);
  let change = 0;
  for (let m = 1; m <= orders; m++) {
    const tRe = wire.re[m]!;
    const tIm = wire.im[m]!;
    const eRe = tRe * meetEvenRe[m]! - tIm * meetEvenIm[m]!;
    const eIm = tRe * meetEvenIm[m]! + tIm * meetEvenRe[m]!;
    const oRe = tRe * meetOddRe[m]! - tIm * meetOddIm[m]! + (m === 1 ? magneticRe : 0);
    const oIm = tRe * meetOddIm[m]! + tIm * meetOddRe[m]! + (m === 1 ? magneticIm : 0);
    const moved = (eRe - evenRe[at + m]!) ** 2 + (eIm - evenIm[at + m]!) ** 2 + (oRe - oddRe[at + m]!) ** 2 + (oIm - oddIm[at + m]!) ** 2;
    change += m * m * moved;
    const sign = m & 1 ? -mirror : mirror;
    evenRe[to + m] = sign * eRe;
    evenIm[to + m] = sign * eIm;
    oddRe[to + m] = -sign * oRe;
    oddIm[to + m] = -sign * oIm;
    evenRe[at + m] = eRe;
    evenIm[at + m] = eIm;
    oddRe[at + m] = oRe;
    oddIm[at + m] = oIm;
  }
  if (bend === 0) return change;
  // the current in the wire is 1; the plane source differs from it by the first two moments across the section
  const scale = currentScale(bend2);
  const sRe = (1 - (bend / 2) * oddRe[at + 1]! - (3 / 8) * bend2 * evenRe[at + 2]!) * scale;
  const sIm = (-(bend / 2) * oddIm[at + 1]! - (3 / 8) * bend2 * evenIm[at + 2]!) * scale;
  f.sourceRe[image] = mirror * sRe;
  f.sourceIm[image] = mirror * sIm;
  f.sourceRe[i] = sRe;
  f.sourceIm[i] = sIm;
  return change;
}

/** Plane current of a ring with unit current in its skin, before its moments are counted. */
export const currentScale = (bend2: number): number => 1 / (1 + (3 / 16) * bend2);

/** Straight wire `other`, below (side 1) or above (side -1) the wire in hand. */
function addStraight(f: RowField, coupling: NeighbourCoupling, other: number, side: 1 | -1): void {
  const { orders, evenRe, evenIm, oddRe, oddIm, meetEvenRe, meetEvenIm, meetOddRe, meetOddIm } = f;
  const { straight, alternate, span, current, currentOrders } = coupling;
  const width = orders + 1;
  const at = other * width;
  const table = side > 0 ? straight : alternate;
  const sRe = f.sourceRe[other]!;
  const sIm = f.sourceIm[other]!;
  const last = Math.min(orders, span - 1);
  for (let q = 1; q <= last; q++) {
    const to = q * width;
    const end = Math.min(orders, span - q);
    let eRe = 0;
    let eIm = 0;
    let oRe = 0;
    let oIm = 0;
    for (let m = 1; m <= end; m++) {
      const w = table[to + m]!;
      eRe += w * evenRe[at + m]!;
      eIm += w * evenIm[at + m]!;
      oRe += w * oddRe[at + m]!;
      oIm += w * oddIm[at + m]!;
    }
    const sign = side > 0 && q & 1 ? -1 : 1;
    meetEvenRe[q] = meetEvenRe[q]! + sign * eRe;
    meetEvenIm[q] = meetEvenIm[q]! + sign * eIm;
    meetOddRe[q] = meetOddRe[q]! - sign * oRe;
    meetOddIm[q] = meetOddIm[q]! - sign * oIm;
    if (q > currentOrders) continue;
    const w = -sign * current[q]!;
    meetEvenRe[q] = meetEvenRe[q]! + w * sRe;
    meetEvenIm[q] = meetEvenIm[q]! + w * sIm;
  }
}

/** What bending wire `other` into a ring adds to the field, and the other's whole part in the voltage of the wire in hand. */
function addRing(f: RowField, coupling: NeighbourCoupling, other: number, side: 1 | -1): void {
  const { orders, bend, bend2, evenRe, evenIm, oddRe, oddIm, meetEvenRe, meetEvenIm, meetOddRe, meetOddIm, meetVoltage } = f;
  const { reach, span } = coupling;
  const ring = coupling.ring!;
  const at = other * (orders + 1);
  const sRe = f.sourceRe[other]!;
  const sIm = f.sourceIm[other]!;
  const z = side * ring.z;
  const xz = side * ring.xz;
  const gradient = ring.zz - ring.xx;
  const eRe = evenRe[at + 1]!;
  const eIm = evenIm[at + 1]!;
  const oRe = oddRe[at + 1]!;
  const oIm = oddIm[at + 1]!;
  meetOddRe[1] = meetOddRe[1]! - bend * (sRe * ring.x - bend * (ring.xy * oRe - xz * eRe));
  meetOddIm[1] = meetOddIm[1]! - bend * (sIm * ring.x - bend * (ring.xy * oIm - xz * eIm));
  meetEvenRe[1] = meetEvenRe[1]! - bend * (sRe * z - bend * (xz * oRe - ring.zz * eRe));
  meetEvenIm[1] = meetEvenIm[1]! - bend * (sIm * z - bend * (xz * oIm - ring.zz * eIm));
  meetEvenRe[2] = meetEvenRe[2]! - (bend2 / 4) * gradient * sRe;
  meetEvenIm[2] = meetEvenIm[2]! - (bend2 / 4) * gradient * sIm;
  meetOddRe[2] = meetOddRe[2]! - (bend2 / 2) * xz * sRe;
  meetOddIm[2] = meetOddIm[2]! - (bend2 / 2) * xz * sIm;

  const whole = ring.whole + (bend2 / 2) * (ring.xx + ring.zz);
  let vRe = whole * sRe - bend * (ring.x * oRe - z * eRe) - bend2 * ((gradient / 2) * evenRe[at + 2]! - xz * oddRe[at + 2]!);
  let vIm = whole * sIm - bend * (ring.x * oIm - z * eIm) - bend2 * ((gradient / 2) * evenIm[at + 2]! - xz * oddIm[at + 2]!);
  let power = 1;
  const last = Math.min(orders, span);
  for (let m = 1; m <= last; m++) {
    power *= side * reach;
    vRe -= power * evenRe[at + m]!;
    vIm -= power * evenIm[at + m]!;
  }
  meetVoltage[0] = meetVoltage[0]! + vRe;
  meetVoltage[1] = meetVoltage[1]! + vIm;
}

/** What the turn's own bending does to it: its own ring field less straight field, and the drive, which goes as 1 / sqrt(rho). */
function addOwnCurvature(f: RowField, i: number): void {
  const { orders, bend, bend2, wire, evenRe, evenIm, oddRe, oddIm, meetEvenRe, meetEvenIm, meetOddRe, meetOddIm, meetVoltage } = f;
  const log = Math.log(8 / bend);
  const whole = log - 2 + bend2 * ((3 / 8) * log - 9 / 16);
  const dipole = bend2 * (13 / 32 - (3 / 8) * log);
  const scale = currentScale(bend2);
  const at = i * (orders + 1);
  const sRe = f.sourceRe[i]!;
  const sIm = f.sourceIm[i]!;
  const vRe = (meetVoltage[0]! + sRe * (whole + wire.internalRe) - sIm * wire.internalIm - (bend / 2) * oddRe[at + 1]!) * scale;
  const vIm = (meetVoltage[1]! + sIm * (whole + wire.internalRe) + sRe * wire.internalIm - (bend / 2) * oddIm[at + 1]!) * scale;
  meetVoltage[0] = vRe;
  meetVoltage[1] = vIm;
  const magneticRe = wire.magneticRe * sRe - wire.magneticIm * sIm;
  const magneticIm = wire.magneticRe * sIm + wire.magneticIm * sRe;
  meetOddRe[1] = meetOddRe[1]! + bend * (magneticRe - (sRe + vRe) / 2) + dipole * oddRe[at + 1]!;
  meetOddIm[1] = meetOddIm[1]! + bend * (magneticIm - (sIm + vIm) / 2) + dipole * oddIm[at + 1]!;
  meetEvenRe[1] = meetEvenRe[1]! + dipole * evenRe[at + 1]!;
  meetEvenIm[1] = meetEvenIm[1]! + dipole * evenIm[at + 1]!;
  meetEvenRe[2] = meetEvenRe[2]! - (bend2 / 16) * (2 * sRe + 3 * vRe);
  meetEvenIm[2] = meetEvenIm[2]! - (bend2 / 16) * (2 * sIm + 3 * vIm);
  for (let m = 2; m <= orders; m++) {
    const w = ((-3 / 8) * bend2) / (m * m - 1);
    meetEvenRe[m] = meetEvenRe[m]! + w * evenRe[at + m]!;
    meetEvenIm[m] = meetEvenIm[m]! + w * evenIm[at + m]!;
    meetOddRe[m] = meetOddRe[m]! + w * oddRe[at + m]!;
    meetOddIm[m] = meetOddIm[m]! + w * oddIm[at + m]!;
  }
}
