import { C, type Complex } from '../numeric/index.ts';
import { type CircleSample, fitTaps } from './unit-circle-fit.ts';

/** How many of so many taps look ahead. */
export const lookAhead = (taps: number): number => (taps >> 1) - 1;

/** Points at which the response is matched in the band of each station, and around the whole circle. */
const BAND_POINTS = 17;
const CIRCLE_POINTS = 64;
/** Weight of the circle as a whole beside a band: enough to keep the taps small where no station is. */
const CIRCLE_WEIGHT = 1e-5;

/** A stretch of spectrum that must come out right [Hz from the reference]. */
export interface Band {
  readonly middle: number;
  readonly half: number;
}

/** What the taps give and what is left over. */
export interface EmfFilter {
  /** tap d multiplies the e.m.f. d - lookAhead samples before the present */
  readonly taps: readonly Complex[];
  /** greatest misfit in each band, by the greatest response in it */
  readonly errors: readonly number[];
}

/**
 * The few taps that make a sampled response exact in the bands of the stations.
 *
 * The modes, stepped from sample to sample, have the circuit's poles but not its response between them, as a signal does not run straight between
 * samples. The difference is smooth in frequency; taps on the e.m.f. take it up, in the sense of least squares over the bands, each weighted by
 * the reciprocal of its own response so that a station far down the slope is as exact as the one that is wanted.
 *
 * @param wanted - response from e.m.f. to port at a frequency from the reference [Hz]
 * @param modes - what the stepped modes give already, at an angle on the unit circle [rad a sample]
 * @param count - of taps
 */
export function emfFilter(
  wanted: (frequency: number) => Complex,
  modes: (angle: number) => Complex,
  bands: readonly Band[],
  rate: number,
  count: number,
): EmfFilter {
  const ahead = lookAhead(count);
  const rows: CircleSample[] = [];
  const row = (frequency: number, weight: number): void => {
    const angle = (2 * Math.PI * frequency) / rate;
    rows.push({ angle, value: C.sub(wanted(frequency), modes(angle)), weight });
  };
  const pointsOf = (b: Band): number[] =>
    Array.from({ length: BAND_POINTS }, (_, k) => b.middle + b.half * ((2 * k) / (BAND_POINTS - 1) - 1));
  let top = 0;
  for (const b of bands) {
    const size = Math.max(...pointsOf(b).map((f) => C.abs(wanted(f))), Number.MIN_VALUE);
    top = Math.max(top, size);
    for (const f of pointsOf(b)) row(f, 1 / size);
  }
  for (let k = 0; k < CIRCLE_POINTS; k++) row(((k + 0.5) / CIRCLE_POINTS - 0.5) * rate, CIRCLE_WEIGHT / top);
  const taps = fitTaps(rows, count, ahead);
  const filter = (angle: number): Complex => taps.reduce((sum, t, d) => C.add(sum, C.mul(t, C.cis(-angle * (d - ahead)))), modes(angle));
  const errors = bands.map((b) => {
    const f = pointsOf(b);
    const size = Math.max(...f.map((x) => C.abs(wanted(x))), Number.MIN_VALUE);
    return Math.max(...f.map((x) => C.abs(C.sub(filter((2 * Math.PI * x) / rate), wanted(x))))) / size;
  });
  return { taps, errors };
}
