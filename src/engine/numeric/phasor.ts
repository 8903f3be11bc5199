/** Points of the table on the circle: the nearest is at most pi/1024 rad away. */
const POINTS = 1024;
const TABLE = new Float64Array(2 * (POINTS + 1));
for (let k = 0; k <= POINTS; k++) {
  TABLE[2 * k] = Math.cos((2 * Math.PI * k) / POINTS);
  TABLE[2 * k + 1] = Math.sin((2 * Math.PI * k) / POINTS);
}

/**
 * Runs a phase along a frequency and gives its phasor: phase += f dt, re + j im = exp(j 2 pi phase).
 *
 * The phasor is that of the nearest of 1024 table points, turned by the rest d as exp(j d) to third order: error below d^4/24 = 4e-12.
 *
 * @param phase - before the first sample [turns], -1/2 to 1/2
 * @param re - receives the real parts
 * @param im - holds the frequency, the mean over the time since the sample before [Hz], of magnitude below the rate; receives the imaginary parts
 * @param interval - dt [s]
 * @returns the phase at the last sample [turns], -1/2 to 1/2: kept small, so each step rounds by 2^-54 turns at most and an hour of
 *   5e9 steps by 3e-7 turns if all of them went one way, 1e-12 as they fall
 */
export function runPhasor(phase: number, re: Float64Array, im: Float64Array, interval: number): number {
  let p = phase;
  for (let n = 0; n < re.length; n++) {
    p += im[n]! * interval;
    if (p > 0.5) p -= 1;
    else if (p < -0.5) p += 1;
    const x = (p + 0.5) * POINTS;
    const nearest = (x + 0.5) | 0;
    const d = (x - nearest) * ((2 * Math.PI) / POINTS);
    // the table starts half a turn early
    const c = -TABLE[2 * nearest]!;
    const s = -TABLE[2 * nearest + 1]!;
    const cosine = 1 - 0.5 * d * d;
    const sine = d * (1 - (d * d) / 6);
    re[n] = c * cosine - s * sine;
    im[n] = s * cosine + c * sine;
  }
  return p;
}
