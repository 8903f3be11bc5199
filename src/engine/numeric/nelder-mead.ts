/** What a search came to. */
export interface Minimum {
  readonly x: Float64Array;
  readonly value: number;
  readonly evaluations: number;
}

/**
 * Least value of a function of several variables inside bounds, by the downhill simplex, begun anew where it stopped until that gains nothing.
 *
 * Points outside the bounds are moved to them. No derivatives, so the function may have corners; it finds a minimum near the start, not the deepest.
 *
 * @param start - inside the bounds
 * @param step - size of the first simplex along each variable
 * @param lower, upper - bounds
 * @param tolerance - relative spread of the values over the simplex at which it stops
 * @param most - evaluations allowed
 * Source: J. A. Nelder & R. Mead, Computer J. 7 (1965) 308; coefficients as in Lagarias et al., SIAM J. Optim. 9 (1998) 112.
 */
export function nelderMead(
  f: (x: Float64Array) => number,
  start: Float64Array,
  step: Float64Array,
  lower: Float64Array,
  upper: Float64Array,
  tolerance: number,
  most: number,
): Minimum {
  let evaluations = 0;
  const value = (x: Float64Array) => {
    evaluations++;
    return f(x);
  };
  let best: Minimum = { x: start.slice(), value: value(start), evaluations };
  for (let round = 0; round < 10 && evaluations < most; round++) {
    const found = descend(value, best, scaled(step, 2 ** -round), lower, upper, tolerance, () => evaluations < most);
    const gained = best.value - found.value;
    best = { ...found, evaluations };
    if (gained <= 10 * tolerance * (Math.abs(found.value) + Number.MIN_VALUE)) break;
  }
  return { ...best, evaluations };
}

const scaled = (v: Float64Array, k: number) => v.map((x) => k * x);

function descend(
  f: (x: Float64Array) => number,
  from: Minimum,
  step: Float64Array,
  lower: Float64Array,
  upper: Float64Array,
  tolerance: number,
  more: () => boolean,
): Minimum {
  const n = step.length;
  const inside = (x: Float64Array) => x.map((v, i) => Math.min(upper[i]!, Math.max(lower[i]!, v)));
  const corners = [{ x: from.x.slice(), value: from.value }];
  for (let i = 0; i < n; i++) {
    const x = from.x.slice();
    // away from the nearer bound, or a corner would fall on the start
    x[i] = x[i]! + (x[i]! + step[i]! <= upper[i]! ? step[i]! : -step[i]!);
    const held = inside(x);
    corners.push({ x: held, value: f(held) });
  }
  while (more()) {
    corners.sort((a, b) => a.value - b.value);
    const least = corners[0]!;
    const worst = corners[n]!;
    if (Math.abs(worst.value - least.value) <= tolerance * (Math.abs(least.value) + Number.MIN_VALUE)) break;
    const centre = least.x.map((_, i) => corners.slice(0, n).reduce((sum, c) => sum + c.x[i]! / n, 0));
    const along = (k: number) => {
      const x = inside(centre.map((c, i) => c + k * (worst.x[i]! - c)));
      return { x, value: f(x) };
    };
    const reflected = along(-1);
    if (reflected.value < least.value) {
      const expanded = along(-2);
      corners[n] = expanded.value < reflected.value ? expanded : reflected;
    } else if (reflected.value < corners[n - 1]!.value) corners[n] = reflected;
    else {
      const contracted = along(reflected.value < worst.value ? -0.5 : 0.5);
      if (contracted.value < Math.min(reflected.value, worst.value)) corners[n] = contracted;
      else
        for (let j = 1; j <= n; j++) {
          const x = corners[j]!.x.map((v, i) => (v + least.x[i]!) / 2);
          corners[j] = { x, value: f(x) };
        }
    }
  }
  corners.sort((a, b) => a.value - b.value);
  return { ...corners[0]!, evaluations: 0 };
}
