/**
 * Cin(x) = integral from 0 to x of (1 - cos t)/t dt, and Si(x) = integral from 0 to x of sin t/t dt.
 *
 * By their power series: the arguments of near pairs are small, and a general routine would spend its time on choosing. Good
 * to 1e-14 up to x = 6, to 1e-10 up to x = 16.
 *
 * @param out - receives Cin and Si
 * Source: Abramowitz & Stegun 5.2.14, 5.2.16.
 */
export function cinSi(x: number, out: Float64Array): void {
  let power = x;
  let sign = 1;
  let c = 0;
  let s = x;
  for (let m = 2; m < 100; m += 2) {
    power *= x / m;
    c += (sign * power) / m;
    sign = -sign;
    power *= x / (m + 1);
    const last = power / (m + 1);
    s += sign * last;
    if (last < 1e-17 * x) break;
  }
  out[0] = c;
  out[1] = s;
}
