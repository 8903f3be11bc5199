import { betweenWholeTurns } from './effective-turns.ts';
import { medhurstCapacitance } from './medhurst-capacitance.ts';
import { ringChargeCapacitance } from './ring-charges.ts';

/** Voltage and current of a wire are quarter waves where it resonates, straight lines where it is short: 12 / pi^2 is the ratio of the capacitances. */
const RESONANCE = 12 / (Math.PI * Math.PI);
/** Above this many turns the measured table alone is used: rings then only cost time. */
const MANY = 30;

export interface SelfCapacitance {
  /** [F] */
  readonly capacitance: number;
  readonly method: 'measured coils' | 'charged rings';
  /** the other of the two, where there is one [F] */
  readonly rival: number | null;
  readonly remark: string | null;
}

/**
 * Self-capacitance of a winding, its cold end earthed, leads not included.
 *
 * The lesser of Medhurst's measured value and the field of the turns as charged rings, raised by 12 / pi^2 to the resonance from which such values are
 * measured. For coils about as long as wide the two agree within 7 %; for few turns on a wide coil the table, which knows no number of turns,
 * gives two to four times what the field of the rings can hold.
 *
 * @param radius - to the middle of the wire [m]
 * @param wireRadius - [m]
 * @param pitch - [m]
 * @param turns - >= 1; parts of turns are read between whole ones
 * Holds for: roughly 20 %. A single turn: against the reactance of a thin loop (Storer 1956), see the tests.
 * Source: medhurst-capacitance.ts, ring-charges.ts.
 */
export function selfCapacitance(radius: number, wireRadius: number, pitch: number, turns: number): SelfCapacitance {
  const table = turns >= 2 ? medhurstCapacitance(2 * radius, turns * pitch) : null;
  if (turns > MANY && table !== null) return { capacitance: table, method: 'measured coils', rival: null, remark: null };
  const rings = RESONANCE * betweenWholeTurns(turns, (n) => ringChargeCapacitance(radius, wireRadius, pitch, n));
  if (table !== null && table <= rings) return { capacitance: table, method: 'measured coils', rival: rings, remark: null };
  return { capacitance: rings, method: 'charged rings', rival: table, remark: remark(turns, table, rings) };
}

function remark(turns: number, table: number | null, rings: number): string | null {
  if (table === null)
    return turns < 2
      ? 'self-capacitance of a single turn is an estimate from its electric field'
      : 'the coil is shorter or longer than any in the measured table of self-capacitance (length 0.1 to 50 diameters): estimated from the electric field of its turns';
  return table > 1.3 * rings
    ? 'few turns on a wide coil: self-capacitance estimated from the electric field of the turns, below the measured table'
    : null;
}
