import {
  assemble,
  GivenError,
  type Listener,
  type Place,
  type ReceivedField,
  type Reception,
  receiveAll,
  resonance,
  type SetDescription,
  standAt,
  tunedTo,
  weaken,
} from '#engine';
import { glance, NOTHING } from '../glance.ts';
import type { Draft, Scatter } from './draft.ts';

/** A set as meant, where it is to stand, and the station it is judged by. */
export interface Meant {
  readonly place: Place;
  readonly set: SetDescription;
  readonly listener: Listener;
  /** index of the station */
  readonly station: number;
}

/** One set as it came out, heard once. */
export interface Built {
  /** each scatter, in standard deviations */
  readonly z: readonly number[];
  /** whether every station is on the dial that is on the dial of the set as meant */
  readonly covers: boolean;
  readonly heard: boolean;
  readonly understood: boolean;
  /** best band over what the ear needs [dB]; null where the station is not on the dial */
  readonly headroom: number | null;
  readonly sii: number;
  /** where the dial stands for the station, as a share of its rotation; null where it is not reached */
  readonly place: number | null;
  /** what the whole set tunes to where the dial of the set as meant would stand [Hz]; null for what cannot be built, or has no resonance anywhere near */
  readonly frequency: number | null;
}

/** Intelligibility from which most words come through, as verdicts have it. */
const UNDERSTOOD: ReadonlySet<string> = new Set(['clear', 'understandable']);

/** Builds a set again and again, each time a little otherwise. */
export class Bench {
  readonly meant: Meant;
  readonly fields: readonly ReceivedField[];
  readonly #signals: Reception['signals'];
  /** stations on the dial of the set as meant, and its angle for the station it is judged by [rad] */
  readonly reached: readonly number[];
  readonly angle: number | null;
  /** what the set as meant tunes to there [Hz]; undefined where it does not reach the station */
  readonly #near: number | undefined;

  constructor(meant: Meant) {
    this.meant = meant;
    this.fields = receiveAll(meant.place);
    const reception = standAt(meant.place, assemble(meant.set, meant.listener), this.fields);
    this.#signals = reception.signals;
    const tuned = reception.signals.map((s) => resonance(reception.receiver, s));
    this.reached = tuned.flatMap((r, k) => ('missing' in r ? [] : [k]));
    const own = tuned[meant.station]!;
    this.angle = 'missing' in own ? null : own.angle;
    this.#near = 'missing' in own ? undefined : reception.signals[meant.station]!.received.station.frequency;
  }

  /** The set that comes of some scatters, each z standard deviations out, as it is heard. */
  build(scatters: readonly Scatter[], z: ArrayLike<number>): Built {
    const meant: Draft = { set: this.meant.set, listener: this.meant.listener, fields: this.fields.map(() => 0) };
    const draft = scatters.reduce((d, s, k) => s.apply(d, z[k]!), meant);
    const drawn = Array.from({ length: scatters.length }, (_, k) => z[k]!);
    try {
      return { z: drawn, ...this.#heard(draft) };
    } catch (e) {
      if (!(e instanceof GivenError)) throw e;
      return { z: drawn, covers: false, heard: false, understood: false, headroom: null, sii: 0, place: null, frequency: null };
    }
  }

  #heard(draft: Draft): Omit<Built, 'z'> {
    const { place, station } = this.meant;
    const receiver = assemble(draft.set, draft.listener);
    // wires of an aerial are not scattered: what they make of the stations is known
    const met = draft.set.aerial.kind === 'coil' ? standAt(place, receiver, this.fields) : { receiver, place, signals: this.#signals };
    const reception = draft.fields.reduce((r, above, k) => (above === 0 ? r : weaken(r, k, -above)), met);
    const g = glance(reception, station);
    return {
      covers: this.reached.every((k) => (k === station ? g.missing === null : !('missing' in resonance(receiver, reception.signals[k]!)))),
      heard: g.missing === null && g.outcome !== 'silent',
      understood: UNDERSTOOD.has(g.outcome),
      headroom: g.missing === null && g.headroom > NOTHING ? g.headroom : null,
      sii: g.sii,
      place: g.missing === null ? g.place : null,
      frequency: tunedTo(receiver, reception.signals[station]!.arrival, this.angle ?? receiver.tank.rotation / 2, this.#near),
    };
  }
}
