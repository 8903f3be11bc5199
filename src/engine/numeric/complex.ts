/** Complex numbers as small immutable pairs, for code where clearness matters more than speed. Hot loops use split arrays. */
export interface Complex {
  readonly re: number;
  readonly im: number;
}

export const ZERO: Complex = { re: 0, im: 0 };
export const ONE: Complex = { re: 1, im: 0 };
export const J: Complex = { re: 0, im: 1 };

export const complex = (re: number, im = 0): Complex => ({ re, im });
export const add = (a: Complex, b: Complex): Complex => ({ re: a.re + b.re, im: a.im + b.im });
export const sub = (a: Complex, b: Complex): Complex => ({ re: a.re - b.re, im: a.im - b.im });
export const mul = (a: Complex, b: Complex): Complex => ({ re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re });
export const scale = (a: Complex, k: number): Complex => ({ re: a.re * k, im: a.im * k });
export const neg = (a: Complex): Complex => ({ re: -a.re, im: -a.im });
export const conj = (a: Complex): Complex => ({ re: a.re, im: -a.im });
/** |a|, safe against overflow. */
export const abs = (a: Complex): number => Math.hypot(a.re, a.im);
/** |a|^2 */
export const abs2 = (a: Complex): number => a.re * a.re + a.im * a.im;
/** Argument [rad], -pi to pi. */
export const arg = (a: Complex): number => Math.atan2(a.im, a.re);

/** a / b by Smith's scaling, so that extreme magnitudes neither overflow nor vanish. */
export function div(a: Complex, b: Complex): Complex {
  if (Math.abs(b.re) >= Math.abs(b.im)) {
    const r = b.im / b.re;
    const d = b.re + b.im * r;
    return { re: (a.re + a.im * r) / d, im: (a.im - a.re * r) / d };
  }
  const r = b.re / b.im;
  const d = b.re * r + b.im;
  return { re: (a.re * r + a.im) / d, im: (a.im * r - a.re) / d };
}

export const inv = (a: Complex): Complex => div(ONE, a);
/** exp(a) */
export function exp(a: Complex): Complex {
  const m = Math.exp(a.re);
  return { re: m * Math.cos(a.im), im: m * Math.sin(a.im) };
}
/** exp(j x) for real x */
export const cis = (x: number): Complex => ({ re: Math.cos(x), im: Math.sin(x) });
/** Principal square root: real part never negative. */
export function sqrt(a: Complex): Complex {
  const m = abs(a);
  if (m === 0) return ZERO;
  const re = Math.sqrt((m + Math.abs(a.re)) / 2);
  const im = a.im / (2 * re);
  if (a.re >= 0) return { re, im };
  return { re: Math.abs(im), im: a.im >= 0 ? re : -re };
}
/** Principal logarithm. */
export const log = (a: Complex): Complex => ({ re: Math.log(abs(a)), im: arg(a) });
/** Two impedances in parallel. */
export const parallel = (a: Complex, b: Complex): Complex => div(mul(a, b), add(a, b));
