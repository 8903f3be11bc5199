/** Points of the table on the circle: the nearest is at most pi/1024 rad away. */
const POINTS = 1024;
const TABLE = new Float64Array(2 * (POINTS + 1));
for (let k = 0; k <= POINTS; k++) {
  // from half a turn before zero
  TABLE[2 * k] = -Math.cos((2 * Math.PI * k) / POINTS);
  TABLE[2 * k + 1] = -Math.sin((2 * Math.PI * k) / POINTS);
}

/**
 * Runs a phase along a frequency and gives its phasor: phase += (f + offset) dt, re + j im = exp(j 2 pi phase).
 *
 * The phasor is that of the nearest of 1024 table points, turned by the rest d as 1 + j d - d^2/2: error below d^3/6 = 5e-9, -166 dB.
 *
 * @param phase - before the first sample [turns], -1/2 to 1/2
 * @param re - receives the real parts
 * @param im - holds the frequency, the mean over the time since the sample before [Hz]; with the offset of magnitude below 1/dt; receives the imaginary parts
 * @param interval - dt [s]
 * @param offset - added to the frequency [Hz]
 * @returns the phase at the last sample [turns], -1/2 to 1/2: kept small, so each step rounds by 2^-54 turns at most and an hour of
 *   5e9 steps by 3e-7 turns if all of them went one way, 1e-12 as they fall
 */
export function runPhasor(phase: number, re: Float64Array, im: Float64Array, interval: number, offset: number): number {
  const steady = offset * interval;
  let p = phase;
  for (let n = 0; n < re.length; n++) {
    p += im[n]! * interval + steady;
    if (p > 0.5) p -= 1;
    else if (p < -0.5) p += 1;
    const x = (p + 0.5) * POINTS;
    const nearest = (x + 0.5) | 0;
    const d = (x - nearest) * ((2 * Math.PI) / POINTS);
    const c = TABLE[2 * nearest]!;
    const s = TABLE[2 * nearest + 1]!;
    const cosine = 1 - 0.5 * d * d;
    re[n] = c * cosine - s * d;
    im[n] = s * cosine + c * d;
  }
  return p;
}
