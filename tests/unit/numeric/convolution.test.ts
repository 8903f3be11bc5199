import { expect, test } from 'vitest';
import { Convolution, MersenneTwister } from '#engine';

const random = new MersenneTwister(4711);
const noise = (length: number): Float64Array => Float64Array.from({ length }, () => random.uniform() - 0.5);

/** The sum as it is written. */
function plain(x: Float64Array, h: Float64Array, n: number): number {
  let sum = 0;
  for (let k = 0; k < h.length && k <= n; k++) sum += h[k]! * x[n - k]!;
  return sum;
}

test('rival: the same as the sum written out, from the first sample on, for filters shorter and longer than every block', () => {
  const x = noise(20_000);
  for (const length of [1, 2, 31, 32, 33, 100, 256, 544, 545, 2048, 4352, 5000, 12_345]) {
    const h = noise(length);
    const y = new Float64Array(x.length);
    new Convolution(h).process(x, y);
    for (let n = 0; n < x.length; n += n < 3000 ? 1 : 97)
      expect(Math.abs(y[n]! - plain(x, h, n)), `${length} taps, sample ${n}`).toBeLessThan(1e-12 * Math.sqrt(length));
  }
});

test('identity: however the signal is cut up, the result is the same to the bit, in place too', () => {
  const x = noise(9000);
  const h = noise(7000);
  const whole = new Float64Array(x.length);
  new Convolution(h).process(x, whole);
  const cut = x.slice();
  const filter = new Convolution(h);
  for (let n = 0, size = 1; n < x.length; n += size, size = (size * 7 + 3) % 611) {
    const piece = cut.subarray(n, Math.min(n + size, x.length));
    filter.process(piece, piece);
  }
  expect(cut).toEqual(whole);
});
