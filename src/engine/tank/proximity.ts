import { answerField, currentScale, meetField, type RowField } from './row-field.ts';
import { CLOSEST, neighbourCouplings, ordersNeeded } from './turn-coupling.ts';
import { wireResponse } from './wire-response.ts';

/** Equal round wires in a row, straight and parallel or bent into coaxial rings. */
export interface RowOfWires {
  /** wires, >= 1 */
  readonly count: number;
  /** wire diameter over pitch, 0 to 1 */
  readonly wireOverPitch: number;
  /** wire radius over ring radius (centre of the wire); 0 for straight wires */
  readonly curvature: number;
  /** wire radius over skin depth, > 0; Infinity for the limit of perfect skin effect */
  readonly radiusInSkinDepths: number;
  /** relative permeability of the wire; 1 if absent */
  readonly permeability?: number;
  /** currents of wires that mirror each other about the middle of the row: 1 equal (a coil; if absent), -1 opposite (count even: a pair, there and back) */
  readonly mirror?: 1 | -1;
  /** relative accuracy of the loss as a series and a relaxation; 3e-4 if absent */
  readonly accuracy?: number;
}

/** The field of such a row when every wire carries the same current. */
export interface FieldOfRow {
  /** loss over that of the same length of the same wire, straight and alone */
  readonly proximityFactor: number;
  /** the same of each wire by itself */
  readonly perWire: readonly number[];
  /** sum of the wires' voltages over j omega mu0 (ring radius) (current): the real part gives inductance, the imaginary part resistance; null for straight wires */
  readonly impedance: { readonly re: number; readonly im: number } | null;
  /** cylindrical orders kept */
  readonly orders: number;
  readonly sweeps: number;
}

/** sweeps after which relaxation is given up; rows within the stated range need at most some 50 */
const SWEEPS = 400;

/** most wire radius over ring radius treated: a wire bent round a rod of its own diameter; beyond it the series in curvature means little */
const MOST_CURVED = 0.5;
/** below this a ring is a straight wire to all digits that matter, and its kernel would lose them */
const STRAIGHT = 1e-7;

/**
 * Field and loss of N round wires in a row, by multipoles.
 *
 * F = sqrt(rho) E obeys the plane Helmholtz equation in the wires and the plane Laplace equation between them, both up to terms of the
 * order of the square of curvature (a/R)^2, and the power lost in a ring is pi sigma times the plane integral of |F|^2 exactly. So rings are
 * treated as a row of straight wires, exactly, with full multipole coupling at any skin depth, in the added field of curvature and of the
 * far sides: ring field less straight field, as uniform field and gradient on each section, for each turn's current, dipole and
 * quadrupole. Terms up to (a/R)^2 are kept, those of the turn on itself for a current in the skin; so the error of the loss is of
 * third order, with a deep skin of second (0.15 % at a/R = 0.1). Unknowns are the multipole strengths of each turn; turns are relaxed
 * one after the other (Gauss-Seidel), which converges because the system is that of a positive magnetic energy.
 *
 * Holds for: currents uniform along the wire; coil small against the wavelength; wireOverPitch taken as at most 0.98, curvature as at most 0.5.
 * Magnetic wire: first order in curvature, and a radius of at least 10 skin depths.
 * Source: Rayleigh, Phil. Mag. 34 (1892) 481 (multipoles of rows); Butterworth, Phil. Trans. A 222 (1922) 57 (wires at finite skin depth);
 * ring kernel as `ringKernel`.
 */
export function fieldOfRow(row: RowOfWires): FieldOfRow {
  const { count, mirror = 1, permeability = 1, accuracy = 3e-4 } = row;
  const spacing = Math.min(row.wireOverPitch, CLOSEST);
  const curvature = row.curvature < STRAIGHT ? 0 : Math.min(row.curvature, MOST_CURVED);
  const orders = count > 1 ? ordersNeeded(spacing, accuracy) : 2;
  const size = count * (orders + 1);
  const half = (count + 1) >> 1;
  const bend2 = permeability === 1 ? curvature * curvature : 0;
  const unit = currentScale(bend2);
  const field: RowField = {
    count,
    orders,
    bend: curvature,
    bend2,
    mirror,
    wire: wireResponse(orders, row.radiusInSkinDepths, permeability),
    couplings: neighbourCouplings(count, spacing, curvature, orders, accuracy),
    evenRe: new Float64Array(size),
    evenIm: new Float64Array(size),
    oddRe: new Float64Array(size),
    oddIm: new Float64Array(size),
    sourceRe: Float64Array.from({ length: count }, (_, i) => (i < half ? unit : mirror * unit)),
    sourceIm: new Float64Array(count),
    meetEvenRe: new Float64Array(orders + 1),
    meetEvenIm: new Float64Array(orders + 1),
    meetOddRe: new Float64Array(orders + 1),
    meetOddIm: new Float64Array(orders + 1),
    meetVoltage: new Float64Array(2),
  };

  let sweeps = 0;
  for (let change = Number.POSITIVE_INFINITY; change > count * (accuracy / 10) ** 2 && sweeps < SWEEPS; sweeps++) {
    change = 0;
    for (let i = 0; i < half; i++) {
      meetField(field, i);
      change += answerField(field, i);
    }
  }
  return { ...collect(field, half), orders, sweeps };
}

/** Losses and voltages once the field stands. */
function collect(field: RowField, half: number): Pick<FieldOfRow, 'proximityFactor' | 'perWire' | 'impedance'> {
  const { count, orders, wire } = field;
  const perWire = new Array<number>(count).fill(0);
  let total = 0;
  let re = 0;
  let im = 0;
  for (let i = 0; i < half; i++) {
    meetField(field, i);
    let loss = field.sourceRe[i]! ** 2 + field.sourceIm[i]! ** 2;
    for (let m = 1; m <= orders; m++)
      loss += wire.loss[m]! * (field.meetEvenRe[m]! ** 2 + field.meetEvenIm[m]! ** 2 + field.meetOddRe[m]! ** 2 + field.meetOddIm[m]! ** 2);
    perWire[i] = loss;
    perWire[count - 1 - i] = loss;
    const weight = 2 * i + 1 === count ? 1 : 2;
    total += weight * loss;
    re += weight * field.meetVoltage[0]!;
    im += weight * field.meetVoltage[1]!;
  }
  return { proximityFactor: total / count, perWire, impedance: field.bend > 0 ? { re, im } : null };
}
