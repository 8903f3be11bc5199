/**
 * Wright omega function of a real argument: the z > 0 that solves z + ln z = y.
 *
 * It is Lambert's W of exp(y), without the overflow of exp(y). A start good to a few per cent, then two steps of fourth order.
 *
 * @param y - any finite number
 * @returns z, relative error below 4e-16 (0 where exp(y) underflows)
 * Source: P. W. Lawrence, R. M. Corless, D. J. Jeffrey, Algorithm 917, ACM Trans. Math. Softw. 38 (2012) 20; the step is that of
 * F. N. Fritsch, R. E. Shafer, W. P. Crowley, Comm. ACM 16 (1973) 123.
 */
export function wrightOmega(y: number): number {
  if (y < -700) return Math.exp(y);
  let z: number;
  if (y > 2) {
    const l = Math.log(y);
    z = y - l + l / y;
  } else if (y < -1) {
    const e = Math.exp(y);
    z = e / (1 + e);
  } else {
    // Taylor about y = 1, where omega = 1, omega' = 1/2, omega'' = 1/8, omega''' = -1/32
    const s = y - 1;
    z = 1 + s * (0.5 + s * (1 / 16 - s / 192));
  }
  for (let step = 0; step < 2; step++) {
    const r = y - z - Math.log(z);
    const one = 1 + z;
    const c = 2 * one * (one + (2 / 3) * r);
    z *= 1 + ((r / one) * (c - r)) / (c - 2 * r);
  }
  return z;
}
