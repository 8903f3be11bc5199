/** Tables read between their points. */

/** Index i with x[i] <= at < x[i + 1], clamped to the first and last interval; x ascending, at least two points. */
export function interval(x: ArrayLike<number>, at: number): number {
  let low = 0;
  let high = x.length - 1;
  while (high - low > 1) {
    const mid = (low + high) >> 1;
    if (x[mid]! <= at) low = mid;
    else high = mid;
  }
  return low;
}

/** Linear between points; the end values are held outside the table. x ascending. */
export function linear(x: ArrayLike<number>, y: ArrayLike<number>, at: number): number {
  const last = x.length - 1;
  if (last === 0 || at <= x[0]!) return y[0]!;
  if (at >= x[last]!) return y[last]!;
  const i = interval(x, at);
  const t = (at - x[i]!) / (x[i + 1]! - x[i]!);
  return y[i]! + t * (y[i + 1]! - y[i]!);
}

/** Linear against the logarithm of x: how levels are read between frequencies. x ascending and above zero. */
export function linearInLog(x: ArrayLike<number>, y: ArrayLike<number>, at: number): number {
  const last = x.length - 1;
  if (last === 0 || at <= x[0]!) return y[0]!;
  if (at >= x[last]!) return y[last]!;
  const i = interval(x, at);
  const t = Math.log(at / x[i]!) / Math.log(x[i + 1]! / x[i]!);
  return y[i]! + t * (y[i + 1]! - y[i]!);
}
