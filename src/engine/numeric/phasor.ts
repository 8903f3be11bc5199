/** Points of the table on the circle: the nearest is at most pi/1024 rad away. */
const POINTS = 1024;
const TABLE = new Float64Array(2 * POINTS);
for (let k = 0; k < POINTS; k++) {
  TABLE[2 * k] = Math.cos((2 * Math.PI * k) / POINTS);
  TABLE[2 * k + 1] = Math.sin((2 * Math.PI * k) / POINTS);
}
/** Cosines and sines of so many points on the circle. */
export const phasorTable = { POINTS, TABLE } as const;
/** Whole turns are taken off only beyond so many: at every turn it would be a branch that nobody can foresee. */
const TURNS = 4;
/** Added so that what is cut off to a whole number is above zero: a multiple of all points, beyond any phase. */
const ABOVE = 2 * TURNS * POINTS;

/**
 * Runs a phase along a frequency and gives its phasor: phase += (f + offset) dt, re + j im = exp(j 2 pi phase).
 *
 * The phasor is that of the nearest of 1024 table points, turned by the rest d as 1 + j d - d^2/2: error below d^3/6 = 5e-9, -166 dB.
 *
 * @param phase - before the first sample [turns], -4 to 4
 * @param re - receives the real parts
 * @param im - holds the frequency, the mean over the time since the sample before [Hz]; with the offset of magnitude below 1/dt; receives the imaginary parts
 * @param interval - dt [s]
 * @param offset - added to the frequency [Hz]
 * @returns the phase at the last sample [turns], -4 to 4: each step rounds by 2^-51 turns at most, an hour of 5e9 steps by 2e-6 turns if all of
 *   them went one way, 1e-11 as they fall
 */
export function runPhasor(phase: number, re: Float64Array, im: Float64Array, interval: number, offset: number): number {
  const steady = offset * interval;
  let p = phase;
  for (let n = 0; n < re.length; n++) {
    p += im[n]! * interval + steady;
    if (p > TURNS) p -= TURNS;
    else if (p < -TURNS) p += TURNS;
    const x = p * POINTS;
    const nearest = (x + (ABOVE + 0.5)) | 0;
    const d = (x - (nearest - ABOVE)) * ((2 * Math.PI) / POINTS);
    const o = (nearest & (POINTS - 1)) << 1;
    const c = TABLE[o]!;
    const s = TABLE[o + 1]!;
    const cosine = 1 - 0.5 * d * d;
    re[n] = c * cosine - s * d;
    im[n] = s * cosine + c * d;
  }
  return p;
}
