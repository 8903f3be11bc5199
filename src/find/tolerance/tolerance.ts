import { normalQuantile, SOBOL_DIMENSIONS, sobolPoint } from '#engine';
import type { UsedPart } from '#set-file';
import { chanceFrom, Draws } from '../search/chance.ts';
import { Bench, type Built, type Meant } from './built.ts';
import type { Scatter } from './draft.ts';
import { deviation, type Estimate, estimate, quantile } from './estimate.ts';
import { type Hand, handScatter, USUAL_HAND } from './hand-scatter.ts';
import { type Influences, influences } from './influences.ts';
import { partScatter } from './part-scatter.ts';
import { placeScatter } from './place-scatter.ts';

/** What many builders of one set would come to. */
export interface Tolerance {
  readonly samples: number;
  /** chance that the station is heard at all; that most words come through; that all stations are on the dial that should be */
  readonly heard: Estimate;
  readonly understood: Estimate;
  readonly covers: Estimate;
  readonly dial: {
    /** what the whole set tunes to at the angle that was meant, relative standard deviation */
    readonly frequency: number;
    /** of the place of the station on the dial, shares of the rotation that 10 and 90 of 100 stay below; null where it is never reached */
    readonly place: readonly [number, number] | null;
    /** what moves it; null of too few samples */
    readonly influences: Influences | null;
  };
  readonly loudness: {
    /** headroom that 10, 50 and 90 of 100 stay below [dB]; null where it is never reached */
    readonly headroom: readonly [number, number, number] | null;
    readonly influences: Influences | null;
  };
}

export interface ToleranceOptions {
  /** bands of the parts a set is made of */
  readonly parts?: readonly UsedPart[];
  readonly hand?: Hand;
  readonly seed?: number;
  /** in place of all that hand, parts, place and ear leave uncertain */
  readonly scatters?: readonly Scatter[];
}

/** Independent rounds, by which the error of a probability is told. */
export const ROUNDS = 8;

/** Every scatter of a set at a place, those of the hand first. */
export function scattersOf(bench: Bench, parts: readonly UsedPart[], hand: Hand): readonly Scatter[] {
  const { set, place } = bench.meant;
  return [...handScatter(set, hand), ...placeScatter(place, bench.fields, set, hand.hearing), ...partScatter(set, parts)];
}

/**
 * Builds a set over and over on paper, each time with other errors, and counts how it does.
 *
 * Errors are drawn by the Sobol sequence in `ROUNDS` rounds, each under a digital shift of its own; the first samples are part of any longer run, so it can be
 * stopped at any time. Scatters beyond the dimensions of the sequence (a place with dozens of stations) are drawn by chance. The aerial is left as it is: its wires
 * are not solved anew.
 */
export class ToleranceRun {
  readonly bench: Bench;
  readonly scatters: readonly Scatter[];
  readonly built: Built[] = [];
  readonly #shifts: readonly Uint32Array[];
  readonly #seed: number;

  constructor(meant: Meant, { parts = [], hand = USUAL_HAND, seed = 1, scatters }: ToleranceOptions = {}) {
    this.bench = new Bench(meant);
    this.#seed = seed;
    this.scatters = scatters ?? scattersOf(this.bench, parts, hand);
    this.#shifts = Array.from({ length: ROUNDS }, (_, round) => {
      const draws = new Draws(chanceFrom(seed, round));
      return Uint32Array.from({ length: this.scatters.length }, () => Math.floor(draws.uniform() * 2 ** 32));
    });
  }

  /** Builds so many more. */
  step(samples: number): void {
    const point = new Float64Array(this.scatters.length);
    const even = point.subarray(0, SOBOL_DIMENSIONS);
    for (let k = 0; k < samples; k++) {
      const at = this.built.length;
      sobolPoint(Math.floor(at / ROUNDS), even, this.#shifts[at % ROUNDS]);
      if (point.length > even.length) {
        const draws = new Draws(chanceFrom(this.#seed, ROUNDS + at));
        // never 0, of which the normal quantile is none
        for (let d = even.length; d < point.length; d++) point[d] = draws.uniform() + 2 ** -33;
      }
      this.built.push(this.bench.build(this.scatters, point.map(normalQuantile)));
    }
  }

  result(): Tolerance {
    const { built } = this;
    const count = (fact: (b: Built) => boolean): Estimate =>
      estimate(
        built.map((b) => (fact(b) ? 1 : 0)),
        ROUNDS,
      );
    const sound = built.filter((b) => b.frequency !== null);
    const reached = built.filter((b) => b.headroom !== null);
    const frequencies = sound.map((b) => b.frequency!);
    const middle = quantile(frequencies, 0.5);
    const places = built.flatMap((b) => (b.place === null ? [] : [b.place]));
    const headrooms = reached.map((b) => b.headroom!);
    return {
      samples: built.length,
      heard: count((b) => b.heard),
      understood: count((b) => b.understood),
      covers: count((b) => b.covers),
      dial: {
        frequency: middle === null ? 0 : deviation(frequencies) / middle,
        place: places.length > 0 ? [quantile(places, 0.1)!, quantile(places, 0.9)!] : null,
        influences: influences(
          sound.map((b) => b.z),
          frequencies,
        ),
      },
      loudness: {
        headroom: headrooms.length > 0 ? [quantile(headrooms, 0.1)!, quantile(headrooms, 0.5)!, quantile(headrooms, 0.9)!] : null,
        influences: influences(
          reached.map((b) => b.z),
          headrooms,
        ),
      },
    };
  }
}

/** The scatters of the set itself that matter most, most first; those of place and ear are not the builder's to mend. */
export function leading(
  scatters: readonly Scatter[],
  of: Influences | null,
  most: number,
): readonly { readonly scatter: Scatter; readonly share: number; readonly slope: number }[] {
  if (!of) return [];
  return scatters
    .map((scatter, k) => ({ scatter, share: of.shares[k]!, slope: of.slopes[k]! }))
    .filter((l) => l.scatter.ofTheSet)
    .sort((a, b) => b.share - a.share)
    .slice(0, most);
}
