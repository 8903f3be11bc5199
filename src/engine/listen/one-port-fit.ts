import { barycentric, C, type Complex, fitRational, type Pencil, type RationalBasis } from '../numeric/index.ts';

/** An impedance given by frequency, as equations in s that hold over a band. */
export interface OnePortFit {
  /** a few words: `rational, degree 2` */
  readonly method: string;
  /** greatest |fit - impedance| over the band, by the greatest |impedance| there */
  readonly error: number;
  /** equations it needs beside that of its own current */
  readonly unknowns: number;
  /** Adds Z(s) I to the branch equation in row and column `branch`, its own unknowns from `first` on. */
  stamp(pencil: Pencil, branch: number, first: number): void;
  /** the fitted impedance [ohm] */
  at(frequency: number): Complex;
}

/** Frequencies at which the impedance is asked, at the Chebyshev points of the band. */
const SAMPLES = 25;
/** A fit is taken as soon as its error is below the first of these; later ones only serve where that gives growing modes. */
const TOLERANCES = [1e-7, 1e-5, 1e-4, 1e-3];
/** Sampled values that differ by no more than this are one and the same. */
const CONSTANT = 1e-9;

/**
 * Fits of an aerial's impedance over a band, best first.
 *
 * Rational by the AAA algorithm: with supports x_j, weights w_j and values f_j, Z = (sum of w_j f_j/(x - x_j))/(sum of w_j/(x - x_j)) is the solution of
 * (x - x_j) p_j = w_j q, sum of p_j = I, V = sum of f_j p_j, which are linear in s = j w. Last the straight line a + b (s - j w0) with complex a and
 * b, which cannot bring in a mode of its own. The envelope knows the upper side of the spectrum only, so nothing asks for real coefficients.
 *
 * @param middle, half - centre and half width of the band [Hz]
 * Source: Y. Nakatsukasa, O. Sete, L. N. Trefethen, SIAM J. Sci. Comput. 40 (2018) A1494; the equations: derived.
 */
export function onePortFits(impedance: (frequency: number) => Complex, middle: number, half: number): OnePortFit[] {
  const x = Float64Array.from({ length: SAMPLES }, (_, k) => -Math.cos((Math.PI * (k + 0.5)) / SAMPLES));
  const values = Array.from(x, (t) => impedance(middle + half * t));
  const top = Math.max(...values.map(C.abs));
  const centre = impedance(middle);
  if (values.every((z) => C.abs(C.sub(z, centre)) <= CONSTANT * top)) return [straightLine(centre, C.ZERO, middle, CONSTANT)];
  const re = values.map((z) => Float64Array.of(z.re));
  const im = values.map((z) => Float64Array.of(z.im));
  const fits: OnePortFit[] = [];
  for (const tolerance of TOLERANCES) {
    const basis = fitRational(x, re, im, tolerance);
    const before = fits.at(-1);
    if (before && before.unknowns === basis.support.length + 1) continue;
    fits.push(rational(basis, values, middle, half));
  }
  return [...fits, leastSquaresLine(x, values, middle, half, top)];
}

function rational(basis: RationalBasis, values: readonly Complex[], middle: number, half: number): OnePortFit {
  const count = basis.support.length;
  const value = Array.from(basis.index, (k) => values[k]!);
  const weights = new Float64Array(2 * count);
  return {
    method: `rational, degree ${count - 1}`,
    error: basis.misfit,
    unknowns: count + 1,
    stamp(pencil, branch, first) {
      const q = first + count;
      for (let j = 0; j < count; j++) {
        const p = first + j;
        // (x - x_j) p_j - w_j q = 0 with x = (w - w0)/W and w = -j s, times W/w0 so that the numbers are of order one
        const support = (middle + half * basis.support[j]!) / middle;
        pencil.add(p, p, { re: -support, im: 0 }, { re: 0, im: -1 / (2 * Math.PI * middle) });
        pencil.add(p, q, { re: (-basis.weightRe[j]! * half) / middle, im: (-basis.weightIm[j]! * half) / middle }, C.ZERO);
        pencil.add(q, p, C.ONE, C.ZERO);
        pencil.add(branch, p, value[j]!, C.ZERO);
      }
      pencil.add(q, branch, { re: -1, im: 0 }, C.ZERO);
    },
    at(frequency) {
      barycentric(basis, (frequency - middle) / half, weights);
      let z: Complex = C.ZERO;
      for (let j = 0; j < count; j++) z = C.add(z, C.mul(value[j]!, { re: weights[2 * j]!, im: weights[2 * j + 1]! }));
      return z;
    },
  };
}

function leastSquaresLine(x: Float64Array, values: readonly Complex[], middle: number, half: number, top: number): OnePortFit {
  // the points are symmetric, so value and slope are found apart
  const n = x.length;
  let square = 0;
  let mean: Complex = C.ZERO;
  let slope: Complex = C.ZERO;
  values.forEach((z, k) => {
    mean = C.add(mean, C.scale(z, 1 / n));
    slope = C.add(slope, C.scale(z, x[k]!));
    square += x[k]! * x[k]!;
  });
  slope = C.scale(slope, 1 / square);
  const error = Math.max(...values.map((z, k) => C.abs(C.sub(C.add(mean, C.scale(slope, x[k]!)), z)))) / top;
  return straightLine(mean, C.scale(slope, 1 / half), middle, error);
}

/** An impedance that is the same at every frequency: for asking at one alone. */
export const constantOnePort = (value: Complex): OnePortFit => straightLine(value, C.ZERO, 0, 0);

/** @param slope - [ohm/Hz] */
function straightLine(value: Complex, slope: Complex, middle: number, error: number): OnePortFit {
  return {
    method: 'straight line',
    error,
    unknowns: 0,
    stamp(pencil, branch) {
      // Z = value + slope (f - f0), f = -j s/(2 pi)
      const bySecond = C.mul(slope, { re: 0, im: -1 / (2 * Math.PI) });
      pencil.add(branch, branch, C.sub(value, C.scale(slope, middle)), bySecond);
    },
    at: (frequency) => C.add(value, C.scale(slope, frequency - middle)),
  };
}
