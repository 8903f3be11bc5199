import { MU0 } from '../constants.ts';
import { ellipticHalfDifference } from '../numeric/index.ts';

/**
 * Inductance of one ring of round wire, current on its surface: L = mu0 R [ln(8R/a) - 2].
 *
 * Source: Grover, Inductance Calculations (1946); Balanis, Antenna Theory, 3rd ed., eq. 5-37a.
 */
const ringInductance = (radius: number, wireRadius: number): number => MU0 * radius * (Math.log((8 * radius) / wireRadius) - 2);

/** Mutual inductance of two equal rings on one axis: mu0 s [(1 - m/2) K - E], s^2 = 4 R^2 + z^2, m = 4 R^2/s^2. Source: Maxwell, Treatise art. 701. */
function ringMutual(radius: number, distance: number): number {
  const square = 4 * radius * radius + distance * distance;
  return MU0 * Math.sqrt(square) * ellipticHalfDifference((4 * radius * radius) / square, (distance * distance) / square);
}

/**
 * Inductance of a loop of a few turns, as a row of rings.
 *
 * L = N L_1 + 2 * sum of (N - m) M(m p); a part of a turn is read between whole numbers in L/N^2.
 *
 * @param radius - mean radius of the turns [m]
 * @param pitch - centre to centre of neighbouring turns [m]; of no account for one turn
 * @returns [H]
 * Holds for wire thin against the radius; crowding of the current by neighbouring turns left out (a few per cent low to high).
 * Source: Maxwell, Treatise (1873) art. 701; Grover (1946).
 */
export function loopInductance(turns: number, radius: number, wireRadius: number, pitch: number): number {
  const whole = (n: number): number => {
    let sum = n * ringInductance(radius, wireRadius);
    for (let m = 1; m < n; m++) sum += 2 * (n - m) * ringMutual(radius, m * pitch);
    return sum / (n * n);
  };
  const low = Math.floor(turns);
  const part = turns - low;
  const each = part === 0 ? whole(low) : (1 - part) * whole(low) + part * whole(low + 1);
  return turns * turns * each;
}
