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
  /** by port: tap d multiplies the e.m.f. d - lookAhead samples before the present */
  readonly taps: readonly (readonly Complex[])[];
  /** by band: what its station's e.m.f. is multiplied by beforehand; a turn of its carrier, which nobody hears, is left out */
  readonly gains: readonly number[];
  /** greatest misfit in each band, by the greatest response in it */
  readonly errors: readonly number[];
}

/** A response from e.m.f. to port. */
export interface EmfResponse {
  /** wanted at a frequency from the reference [Hz] */
  readonly wanted: (frequency: number) => Complex;
  /** what the stepped modes give already, at an angle on the unit circle [rad a sample] */
  readonly modes: (angle: number) => Complex;
}

/** How firmly a gain is held at one where the bands leave it open, by the greatest response of a band. */
const GAIN_WEIGHT = 1e-4;

/**
 * The few taps that make a sampled response exact in the bands of the stations.
 *
 * The modes, stepped from sample to sample, have the circuit's poles but not its response between them, as a signal does not run straight between
 * samples. The difference is smooth in frequency; taps on the e.m.f. take it up, in the sense of least squares over the bands, each weighted by
 * the reciprocal of its own response so that a station far down the slope is as exact as the one that is wanted.
 *
 * Where the sampled band ends the response jumps from that of its upper edge to that of its lower, which taps can't follow. So each station but the one
 * nearest the reference has a factor c of its own: with b = 1/c, taps + modes = b times the wanted response is linear in the taps and all b together, and
 * the station's e.m.f. is multiplied by c before all are summed. The stations' carriers have no phase towards each other, so that |c| will do.
 *
 * @param responses - by port
 * @param count - of taps
 */
export function emfFilter(responses: readonly EmfResponse[], bands: readonly Band[], rate: number, count: number): EmfFilter {
  const ahead = lookAhead(count);
  const angleOf = (frequency: number): number => (2 * Math.PI * frequency) / rate;
  const nearest = bands.reduce((best, b, k) => (Math.abs(b.middle) < Math.abs(bands[best]!.middle) ? k : best), 0);
  const ports = responses.map(({ wanted, modes }) => {
    const sample = (frequency: number) => ({ angle: angleOf(frequency), wanted: wanted(frequency), modes: modes(angleOf(frequency)) });
    const inBands = bands.map((b) =>
      Array.from({ length: BAND_POINTS }, (_, k) => sample(b.middle + b.half * ((2 * k) / (BAND_POINTS - 1) - 1))),
    );
    const sizes = inBands.map((points) => Math.max(...points.map((p) => C.abs(p.wanted)), Number.MIN_VALUE));
    const top = Math.max(0, ...sizes);
    const rows: CircleSample[] = [];
    inBands.forEach((points, band) => {
      for (const p of points)
        rows.push(
          band === nearest
            ? { angle: p.angle, value: C.sub(p.wanted, p.modes), weight: 1 / sizes[band]! }
            : { angle: p.angle, value: C.neg(p.modes), weight: 1 / sizes[band]!, scaled: { by: band, value: p.wanted } },
        );
    });
    for (let k = 0; k < CIRCLE_POINTS; k++) {
      const p = sample(((k + 0.5) / CIRCLE_POINTS - 0.5) * rate);
      rows.push({ angle: p.angle, value: C.sub(p.wanted, p.modes), weight: CIRCLE_WEIGHT / top });
    }
    return { rows, inBands, sizes };
  });
  const { taps, scales } = fitTaps(
    ports.map((p) => p.rows),
    count,
    ahead,
    bands.length,
    GAIN_WEIGHT,
  );
  const gains = scales.map(C.inv);
  const errors = bands.map((_, band) =>
    Math.max(
      ...ports.map(({ inBands, sizes }, j) => {
        const off = inBands[band]!.map(({ angle, wanted, modes }) => {
          const given = taps[j]!.reduce((sum, t, d) => C.add(sum, C.mul(t, C.cis(-angle * (d - ahead)))), modes);
          return C.abs(C.sub(C.mul(given, gains[band]!), wanted));
        });
        return Math.max(...off) / sizes[band]!;
      }),
    ),
  );
  return { taps, gains: gains.map(C.abs), errors };
}
