/**
 * The periodic curve through evenly spaced samples of one period that has no harmonic above half their number: trigonometric interpolation.
 *
 * @param samples - n values, n even, at phases k/n
 * @param phase - where it is read, as shares of the period
 * Source: barycentric form, P. Henrici, Numer. Math. 33 (1979) 225.
 */
export function throughSamples(samples: Float64Array, phase: Float64Array): Float64Array {
  const n = samples.length;
  return phase.map((p) => {
    let above = 0;
    let below = 0;
    for (let k = 0; k < n; k++) {
      const turn = Math.PI * (p - k / n);
      const sine = Math.sin(turn);
      if (Math.abs(sine) < 1e-12) return samples[k]!;
      const weight = ((k % 2 === 0 ? 1 : -1) * Math.cos(turn)) / sine;
      above += weight * samples[k]!;
      below += weight;
    }
    return above / below;
  });
}
