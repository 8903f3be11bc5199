import { type AerialDescription, assemble, GivenError, type Reception, type Signal, standAt } from '#engine';
import { type Glance, glance } from '../glance.ts';
import { Builder } from './build.ts';
import { bandEnds } from './covering.ts';
import { type Design, keyOf } from './design.ts';
import type { Space } from './space.ts';

/** What one design comes to at the stations that count. */
export type Trial = readonly Glance[];

/** Trials remembered at most. */
const KEPT = 200_000;

/** Tries designs by evaluating them; each is evaluated once, and stages that designs share are made once. */
export class Trials {
  readonly #space: Space;
  readonly builder: Builder;
  readonly #signals = new Map<AerialDescription, readonly Signal[]>();
  readonly #known = new Map<string, Trial | null>();
  /** designs evaluated in full, leaving out those remembered */
  evaluated = 0;

  constructor(space: Space) {
    this.#space = space;
    this.builder = new Builder(space);
  }

  /** Null where the engine refuses the set. */
  of(d: Design): Trial | null {
    const key = keyOf(d);
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    if (this.#known.size >= KEPT) this.#known.clear();
    const trial = this.#evaluate(d);
    this.#known.set(key, trial);
    return trial;
  }

  #evaluate(d: Design): Trial | null {
    this.evaluated++;
    try {
      const reception = this.reception(d);
      const band = bandEnds(this.#space.band, reception);
      return this.#space.stations.map((k) => ({ ...glance(reception, k), ...(band && { band }) }));
    } catch (e) {
      if (e instanceof GivenError) return null;
      throw e;
    }
  }

  /** The set of a design where it is to stand; the e.m.f. of an aerial that is not the coil is worked out once. */
  reception(d: Design): Reception {
    const { place, listener, fields } = this.#space;
    const set = this.builder.set(d);
    const receiver = assemble(set, listener);
    if (set.aerial.kind === 'coil') return standAt(place, receiver, fields);
    const known = this.#signals.get(set.aerial);
    if (known) return { receiver, place, signals: known };
    const made = standAt(place, receiver, fields);
    this.#signals.set(set.aerial, made.signals);
    return made;
  }
}
