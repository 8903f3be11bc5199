import { type EnvelopeSource, fourierTransform } from '#engine';

/**
 * A receiver without faults, made for these tests and sharing only the Fourier transform with the engine: the exact phase difference as discriminator,
 * then everything by Fourier sums over a window that all frequencies in the test fit exactly.
 */
export interface Window {
  readonly rate: number;
  readonly size: number;
  readonly re: Float64Array;
  readonly im: Float64Array;
  /** time of its first sample [s] */
  readonly start: number;
}

/** Lets the station run, then takes a window of so many seconds, and the sample before it. */
export function take(station: EnvelopeSource, from: number, length: number): Window {
  const { rate } = station;
  const size = Math.round(length * rate);
  const skip = Math.round(from * rate) - 1;
  const block = 15000;
  const [a, b] = [new Float64Array(block), new Float64Array(block)];
  for (let at = 0; at + block <= skip; at += block) station.next(a, b);
  const rest = skip % block;
  station.next(a.subarray(0, rest), b.subarray(0, rest));
  const [re, im] = [new Float64Array(size + 1), new Float64Array(size + 1)];
  station.next(re, im);
  return { rate, size, re, im, start: from };
}

/** Complex amplitudes of the bins, peak: x(t) = sum of re cos + ... at k/length hertz, phases at the time zero of the programme. */
export interface Spectrum {
  readonly length: number;
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** Peak amplitude at a frequency [Hz]; at zero the mean. */
export const amplitude = (s: Spectrum, frequency: number): number => {
  const k = Math.round(frequency * s.length);
  return Math.hypot(s.re[k]!, s.im[k]!) * (k === 0 ? 1 : 2);
};

/** Phase of a sine at a frequency, at time zero [rad]. */
export const sinePhase = (s: Spectrum, frequency: number): number => {
  const k = Math.round(frequency * s.length);
  return Math.atan2(s.im[k]!, s.re[k]!) + Math.PI / 2;
};

/** Bins of x, whose first sample stands at `start`; each multiplied by `gain` of its frequency [Hz, negative in the upper half]. */
function spectrum(x: Float64Array, rate: number, start: number, gain: (frequency: number) => number = () => 1): Spectrum {
  const size = x.length;
  const re = x.slice();
  const im = new Float64Array(size);
  fourierTransform(size).forward(re, im);
  for (let k = 0; k < size; k++) {
    const f = ((k <= size / 2 ? k : k - size) * rate) / size;
    const turn = -2 * Math.PI * f * start;
    const g = gain(f) / size;
    const [a, b] = [re[k]!, im[k]!];
    re[k] = g * (a * Math.cos(turn) - b * Math.sin(turn));
    im[k] = g * (a * Math.sin(turn) + b * Math.cos(turn));
  }
  return { length: size / rate, re, im };
}

/** Frequency against time [Hz]: sample n is the mean over the interval before sample n + 1 of the window. */
export function discriminate(w: Window): Float64Array {
  return Float64Array.from({ length: w.size }, (_, n) => {
    const [a, b, c, d] = [w.re[n]!, w.im[n]!, w.re[n + 1]!, w.im[n + 1]!];
    return (Math.atan2(a * d - b * c, a * c + b * d) / (2 * Math.PI)) * w.rate;
  });
}

/** Spectrum of the multiplex [Hz peak]; the mean over an interval is undone by its own response, sinc. */
export function multiplexSpectrum(w: Window): Spectrum {
  // the interval that ends at sample k, which stands at (k + 1/2)/rate, is centred on k/rate
  return spectrum(discriminate(w), w.rate, w.start, (f) => {
    const x = (Math.PI * f) / w.rate;
    return x === 0 ? 1 : x / Math.sin(x);
  });
}

/** Spectrum of an AM envelope less its mean: sample k stands at k/rate. */
export const envelopeSpectrum = (w: Window): Spectrum =>
  spectrum(
    w.re.slice(1).map((x, n) => Math.hypot(x, w.im[n + 1]!) - 1),
    w.rate,
    w.start,
  );

/** Audio of a spectrum up to 15 kHz, de-emphasised, by the deviation of full modulation. */
export interface Audio {
  readonly left: Spectrum;
  readonly right: Spectrum;
}

export function decode(multiplex: Spectrum, deviation: number, timeConstant: number, stereo: boolean): Audio {
  const { length } = multiplex;
  const size = multiplex.re.length;
  const top = Math.round(15e3 * length);
  const at = (k: number): [number, number] => [multiplex.re[(k + size) % size]!, multiplex.im[(k + size) % size]!];
  const blank = (): Spectrum => ({ length, re: new Float64Array(top + 1), im: new Float64Array(top + 1) });
  const out = { left: blank(), right: blank() };
  const pilot = stereo ? sinePhase(multiplex, 19e3) : 0;
  const shift = Math.round(38e3 * length);
  for (let k = 0; k <= top; k++) {
    const m = at(k);
    // S: times 2 sin(2 w t), with the phase of the pilot: a component at k from those at k - shift and k + shift, by -j e^{j 2 p} and its conjugate
    let s: [number, number] = [0, 0];
    if (stereo) {
      const [c, d] = [Math.cos(2 * pilot), Math.sin(2 * pilot)];
      const low = at(k - shift);
      const high = at(k + shift);
      s = [low[0] * d + low[1] * c + (high[0] * d - high[1] * c), -low[0] * c + low[1] * d + (high[0] * c + high[1] * d)];
    }
    const wt = ((2 * Math.PI * k) / length) * timeConstant;
    const scale = 1 / (deviation * (stereo ? 0.9 : 1) * (1 + wt * wt));
    for (const [side, sign] of [
      [out.left, 1],
      [out.right, -1],
    ] as const) {
      const [x, y] = [m[0] + sign * s[0], m[1] + sign * s[1]];
      // divided by 1 + j w tau
      side.re[k] = scale * (x + wt * y);
      side.im[k] = scale * (y - wt * x);
    }
  }
  return out;
}

/** Power of the given tones over that of everything else from 20 Hz to the top of the spectrum [dB]. */
export function sinad(s: Spectrum, frequencies: readonly number[], top: number): number {
  let wanted = 0;
  let rest = 0;
  for (let k = Math.ceil(20 * s.length); k <= Math.round(top * s.length); k++) {
    const power = s.re[k]! ** 2 + s.im[k]! ** 2;
    if (frequencies.some((f) => Math.round(f * s.length) === k)) wanted += power;
    else rest += power;
  }
  return 10 * Math.log10(wanted / rest);
}
