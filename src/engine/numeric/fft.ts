/** A discrete Fourier transform of one size, its tables made once; both directions work in place. */
export interface FourierTransform {
  readonly size: number;
  /** X_k = sum of x_n exp(-j 2 pi k n/N) */
  forward(re: Float64Array, im: Float64Array): void;
  /** x_n = (1/N) sum of X_k exp(j 2 pi k n/N) */
  inverse(re: Float64Array, im: Float64Array): void;
}

/**
 * Fourier transform of any size: radix 2 where the size is a power of two, else as a convolution with a chirp by transforms that are.
 *
 * @param size - number of points, 1 or more
 * Rounding: relative error of the whole about 1e-16 sqrt(log2 N); a few times that for other sizes.
 * Source: J. W. Cooley, J. W. Tukey, Math. Comp. 19 (1965) 297; L. I. Bluestein, IEEE Trans. Audio Electroacoust. 18 (1970) 451.
 */
export function fourierTransform(size: number): FourierTransform {
  const forward = (size & (size - 1)) === 0 ? radixTwo(size) : chirp(size);
  return {
    size,
    forward,
    inverse(re, im) {
      // with the parts changed round the forward sum is the inverse one
      forward(im, re);
      for (let k = 0; k < size; k++) {
        re[k] = re[k]! / size;
        im[k] = im[k]! / size;
      }
    },
  };
}

type InPlace = (re: Float64Array, im: Float64Array) => void;

/** Steps of radix 2 taken two at a time, for half the way through memory; an odd one comes first, alone. */
function radixTwo(size: number): InPlace {
  const cos = Float64Array.from({ length: (3 * size) / 4 }, (_, k) => Math.cos((2 * Math.PI * k) / size));
  const sin = Float64Array.from({ length: (3 * size) / 4 }, (_, k) => -Math.sin((2 * Math.PI * k) / size));
  const reversed = new Uint32Array(size);
  for (let k = 1, half = size >> 1; k < size; k++) reversed[k] = (reversed[k >> 1]! >> 1) | (k & 1 ? half : 0);
  const odd = (31 - Math.clz32(size)) % 2 === 1;
  return (re, im) => {
    for (let k = 0; k < size; k++) {
      const r = reversed[k]!;
      if (r <= k) continue;
      const x = re[k]!;
      const y = im[k]!;
      re[k] = re[r]!;
      im[k] = im[r]!;
      re[r] = x;
      im[r] = y;
    }
    if (odd) pairs(re, im, size);
    for (let quarter = odd ? 2 : 1; quarter < size; quarter *= 4) fours(re, im, size, quarter, cos, sin);
  };
}

/** The first step: sums and differences of neighbours. */
function pairs(re: Float64Array, im: Float64Array, size: number): void {
  for (let a = 0; a < size; a += 2) {
    const x = re[a + 1]!;
    const y = im[a + 1]!;
    re[a + 1] = re[a]! - x;
    im[a + 1] = im[a]! - y;
    re[a] = re[a]! + x;
    im[a] = im[a]! + y;
  }
}

/** Two steps in one: transforms of `quarter` points become those of four times as many. */
function fours(re: Float64Array, im: Float64Array, size: number, quarter: number, cos: Float64Array, sin: Float64Array): void {
  const stride = size / (4 * quarter);
  for (let start = 0; start < size; start += 4 * quarter)
    for (let k = 0, t = 0; k < quarter; k++, t += stride) {
      const a = start + k;
      const b = a + quarter;
      const c = b + quarter;
      const d = c + quarter;
      const b0 = re[b]!;
      const b1 = im[b]!;
      const c0 = re[c]!;
      const c1 = im[c]!;
      const d0 = re[d]!;
      const d1 = im[d]!;
      const bRe = b0 * cos[2 * t]! - b1 * sin[2 * t]!;
      const bIm = b0 * sin[2 * t]! + b1 * cos[2 * t]!;
      const cRe = c0 * cos[t]! - c1 * sin[t]!;
      const cIm = c0 * sin[t]! + c1 * cos[t]!;
      const dRe = d0 * cos[3 * t]! - d1 * sin[3 * t]!;
      const dIm = d0 * sin[3 * t]! + d1 * cos[3 * t]!;
      const evenRe = re[a]! + bRe;
      const evenIm = im[a]! + bIm;
      const oddRe = re[a]! - bRe;
      const oddIm = im[a]! - bIm;
      const sumRe = cRe + dRe;
      const sumIm = cIm + dIm;
      const gapRe = cRe - dRe;
      const gapIm = cIm - dIm;
      re[a] = evenRe + sumRe;
      im[a] = evenIm + sumIm;
      re[c] = evenRe - sumRe;
      im[c] = evenIm - sumIm;
      // a quarter turn back
      re[b] = oddRe + gapIm;
      im[b] = oddIm - gapRe;
      re[d] = oddRe - gapIm;
      im[d] = oddIm + gapRe;
    }
}

/** n k = (n^2 + k^2 - (k - n)^2)/2 makes the sum a convolution. */
function chirp(size: number): InPlace {
  let padded = 1;
  while (padded < 2 * size - 1) padded *= 2;
  const transform = radixTwo(padded);
  // k^2 is taken by the period 2 N, so that the angle stays small and exact
  const angle = (k: number): number => (Math.PI * ((k * k) % (2 * size))) / size;
  const cos = Float64Array.from({ length: size }, (_, k) => Math.cos(angle(k)));
  const sin = Float64Array.from({ length: size }, (_, k) => -Math.sin(angle(k)));
  const filterRe = new Float64Array(padded);
  const filterIm = new Float64Array(padded);
  for (let k = 0; k < size; k++) {
    for (const at of [k, (padded - k) % padded]) {
      filterRe[at] = cos[k]! / padded;
      filterIm[at] = -sin[k]! / padded;
    }
  }
  transform(filterRe, filterIm);
  const a = new Float64Array(padded);
  const b = new Float64Array(padded);
  return (re, im) => {
    a.fill(0);
    b.fill(0);
    for (let k = 0; k < size; k++) {
      a[k] = re[k]! * cos[k]! - im[k]! * sin[k]!;
      b[k] = re[k]! * sin[k]! + im[k]! * cos[k]!;
    }
    transform(a, b);
    for (let k = 0; k < padded; k++) {
      const x = a[k]! * filterRe[k]! - b[k]! * filterIm[k]!;
      b[k] = a[k]! * filterIm[k]! + b[k]! * filterRe[k]!;
      a[k] = x;
    }
    // back again, by the parts changed round; the filter holds the 1/N
    transform(b, a);
    for (let k = 0; k < size; k++) {
      re[k] = a[k]! * cos[k]! - b[k]! * sin[k]!;
      im[k] = a[k]! * sin[k]! + b[k]! * cos[k]!;
    }
  };
}
