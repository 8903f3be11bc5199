/**
 * Turns as the magnetic flux counts them, from the start of the winding to a place along the wire.
 *
 * E(t) = t - sin(2 pi t) / (2 pi)
 *
 * Whole turns count as they are. A part of a turn closes by a straight chord, which is the shortest way back to the side where the winding began, and
 * counts by the area of its segment of the circle: a quarter turn 0.09, a half 0.5, three quarters 0.91.
 *
 * @param turns - along the wire, >= 0
 * Holds for: wires that leave the part turn along the chord; a lead that goes round the coil instead adds or takes up to a quarter turn.
 * Source: geometry of the circular segment.
 */
export function effectiveTurns(turns: number): number {
  const whole = Math.floor(turns);
  const part = turns - whole;
  return whole + part - Math.sin(2 * Math.PI * part) / (2 * Math.PI);
}

/** A function of whole turns, read straight between them. */
export function betweenWholeTurns(turns: number, f: (whole: number) => number): number {
  const low = Math.floor(turns);
  const part = turns - low;
  return part === 0 ? f(low) : (1 - part) * f(low) + part * f(low + 1);
}
