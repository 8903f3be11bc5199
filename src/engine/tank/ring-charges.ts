import { EPSILON0 } from '../constants.ts';
import { ellipticKE } from '../numeric/elliptic.ts';
import { solveReal } from '../numeric/solve-real.ts';

/**
 * Capacitance that the coil's own electric field amounts to while its voltage rises evenly along the wire from the earthed end.
 *
 * C = sum_ij v_i (P^-1)_ij v_j + C_turn / N,  v_i = (i + 1/2) / N,
 * P_ii = ln(8R/a) / (4 pi^2 eps0 R),  P_ij = K(k) / (2 pi^2 eps0 s),  s^2 = 4 R^2 + z^2,  k = 2R / s
 *
 * Each turn is a charged ring at its mean voltage; C_turn is the field of the rise within a turn.
 *
 * @param radius - R, to the middle of the wire [m]
 * @param wireRadius - a [m]
 * @param pitch - [m]
 * @param turns - whole turns
 * @returns [F]
 * Holds for: wire short against the wave, nothing else near; within 5 % of the field of the whole helix (tests/reference/tank, charges).
 * Source: potential of a charged ring, Smythe, Static and Dynamic Electricity (1950) sec. 5.03; assembled here.
 */
export function ringChargeCapacitance(radius: number, wireRadius: number, pitch: number, turns: number): number {
  const potential = new Float64Array(turns);
  const unit = 1 / (2 * Math.PI * Math.PI * EPSILON0);
  potential[0] = (unit * Math.log((8 * radius) / wireRadius)) / (2 * radius);
  for (let n = 1; n < turns; n++) {
    const z = n * pitch;
    const s2 = 4 * radius * radius + z * z;
    potential[n] = (unit * ellipticKE((4 * radius * radius) / s2, (z * z) / s2).k) / Math.sqrt(s2);
  }
  const matrix = new Float64Array(turns * turns);
  const charge = new Float64Array(turns);
  for (let i = 0; i < turns; i++) {
    charge[i] = (i + 0.5) / turns;
    for (let j = 0; j < turns; j++) matrix[i * turns + j] = potential[Math.abs(i - j)]!;
  }
  solveReal(turns, matrix, charge);
  let sum = 0;
  for (let i = 0; i < turns; i++) sum += charge[i]! * ((i + 0.5) / turns);
  return sum + turnCapacitance(radius, wireRadius) / turns;
}

/**
 * Capacitance of the field between parts of one turn, opened at a point, whose voltage rises evenly around it.
 *
 * C = 2 eps0 R sum_m 1 / (m^2 S_m),  S_m = ln(8R/a) - 2 sum_{k<=m} 1 / (2k - 1)
 *
 * @param radius - R [m]
 * @param wireRadius - a [m]
 * @returns [F] for one volt around the turn
 * Holds for: thin wire; harmonics finer than the wire is thick are held at S = 1/2.
 * Source: the rise as a Fourier series, v = -sum sin(m phi) / (pi m); potential of a ring charged as sin(m phi) from the asymptote of the toroidal function Q_(m-1/2).
 */
export function turnCapacitance(radius: number, wireRadius: number): number {
  let s = Math.log((8 * radius) / wireRadius);
  let sum = 0;
  for (let m = 1; m <= 30; m++) {
    s -= 2 / (2 * m - 1);
    sum += 1 / (m * m * Math.max(s, 0.5));
  }
  return 2 * EPSILON0 * radius * sum;
}
