import type { MersenneTwister } from '../../../numeric/index.ts';

/** Rate at which the piece is synthesised [Hz]. */
export const MUSIC_RATE = 32_000;

const seconds = (s: number): number => Math.round(s * MUSIC_RATE);
/** What is left of a sound after each sample, if it falls to 1/1000 within a time [s]. */
const fading = (time: number): number => 10 ** (-3 / (MUSIC_RATE * time));

/**
 * A plucked string: a burst of noise goes round a delay of one period, a little averaged with its neighbour each time.
 *
 * @param time - in which it falls to 1/1000 [s]
 * @param brightness - of the burst: 1 as it is, less to soften it
 * Source: K. Karplus, A. Strong, Computer Music Journal 7, 2 (1983) 43; fractional delay and unequal average: D. A. Jaffe, J. O. Smith, same issue, 56.
 */
export function pluck(frequency: number, time: number, brightness: number, chance: MersenneTwister): Float64Array {
  // the average itself delays by its second weight
  const second = 0.2;
  const period = MUSIC_RATE / frequency - second;
  const length = Math.floor(period - 0.3);
  const rest = period - length;
  const allPass = (1 - rest) / (1 + rest);
  const loss = fading(time) ** (MUSIC_RATE / frequency);
  const line = Float64Array.from({ length }, () => 2 * chance.uniform() - 1);
  // twice round, so that the burst has no seam
  for (let k = 1; k < 2 * length; k++) {
    const at = k % length;
    line[at] = line[at]! * brightness + line[(k - 1) % length]! * (1 - brightness);
  }
  const mean = line.reduce((s, x) => s + x, 0) / length;
  const rms = Math.sqrt(line.reduce((s, x) => s + (x - mean) ** 2, 0) / length);
  for (let k = 0; k < length; k++) line[k] = (line[k]! - mean) / rms;
  const out = new Float64Array(seconds(1.2 * time));
  let [before, inBefore, outBefore] = [0, 0, 0];
  for (let n = 0, at = 0; n < out.length; n++) {
    const x = line[at]!;
    const averaged = loss * ((1 - second) * x + second * before);
    before = x;
    outBefore = allPass * (averaged - outBefore) + inBefore;
    inBefore = averaged;
    line[at] = outBefore;
    out[n] = x * Math.min(1, n / seconds(0.003));
    if (++at === length) at = 0;
  }
  return release(out);
}

/** A blown tone: harmonics that fade upwards, a slow swell and shake, a little breath. */
export function blow(frequency: number, time: number, chance: MersenneTwister): Float64Array {
  const harmonics = [1, 0.45, 0.3, 0.12, 0.07, 0.04, 0.02];
  const out = new Float64Array(seconds(time));
  let phase = 0;
  let breath = 0;
  for (let n = 0; n < out.length; n++) {
    const t = n / MUSIC_RATE;
    const swell = Math.min(1, t / 0.08) * Math.min(1, (time - t) / 0.1);
    const shake = 1 + 0.004 * Math.min(1, t / 0.4) * Math.sin(2 * Math.PI * 5.1 * t);
    phase = (phase + (frequency * shake) / MUSIC_RATE) % 1;
    // sines of the multiples of an angle from those of the two before
    const double = 2 * Math.cos(2 * Math.PI * phase);
    let [sine, last] = [Math.sin(2 * Math.PI * phase), 0];
    let x = 0;
    for (const h of harmonics) {
      x += h * sine;
      [sine, last] = [double * sine - last, sine];
    }
    breath += 0.3 * (2 * chance.uniform() - 1 - breath);
    out[n] = swell * (x + 0.06 * breath);
  }
  return out;
}

/** A small bell: one sine shakes the phase of another, less and less. Source: J. M. Chowning, J. Audio Eng. Soc. 21 (1973) 526. */
export function bell(frequency: number, time: number): Float64Array {
  const out = new Float64Array(seconds(time));
  const [left, indexLeft] = [fading(time), fading(0.5 * time)];
  let [level, index] = [1, 2.2];
  for (let n = 0; n < out.length; n++) {
    const angle = (2 * Math.PI * frequency * n) / MUSIC_RATE;
    out[n] = level * Math.min(1, n / seconds(0.002)) * Math.sin(angle + index * Math.sin(3 * angle));
    level *= left;
    index *= indexLeft;
  }
  return release(out);
}

/** A shaken rattle: a short rush of noise without its lows. */
export function rattle(time: number, chance: MersenneTwister): Float64Array {
  const out = new Float64Array(seconds(1.5 * time));
  const left = fading(time);
  let [low, level] = [0, 1];
  for (let n = 0; n < out.length; n++) {
    const x = 2 * chance.uniform() - 1;
    low += 0.6 * (x - low);
    out[n] = (x - low) * level * Math.min(1, n / seconds(0.004));
    level *= left;
  }
  return out;
}

/** A soft drum: a sine that falls from 120 to 52 Hz. */
export function drum(time: number): Float64Array {
  const out = new Float64Array(seconds(time));
  const [left, highLeft] = [fading(time), fading(0.12)];
  let [phase, level, high] = [0, 1, 68];
  for (let n = 0; n < out.length; n++) {
    phase += (52 + high) / MUSIC_RATE;
    out[n] = Math.sin(2 * Math.PI * phase) * level;
    level *= left;
    high *= highLeft;
  }
  return release(out);
}

/** The last 20 ms fade, so that nothing ends with a click. */
function release(x: Float64Array): Float64Array {
  const length = seconds(0.02);
  for (let n = Math.max(0, x.length - length); n < x.length; n++) x[n] = (x[n]! * (x.length - n)) / length;
  return x;
}
