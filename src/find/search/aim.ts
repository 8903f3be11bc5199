import type { Glance } from '../glance.ts';
import type { Space } from './space.ts';

/** What a search makes as large as it can. */
export type AimName =
  /** intelligibility of speech (SII) */
  | 'speech'
  /** level of the best band over what the ear needs there [dB] */
  | 'loudness'
  /** least distortion at a level that is heard */
  | 'clean'
  /** how many stations are heard */
  | 'stations';

/** In the order in which they are offered. */
export const AIM_NAMES: readonly AimName[] = ['speech', 'loudness', 'clean', 'stations'];

/** Shares of the four, none below zero and of any sum; one alone is that aim. */
export type Aim = Readonly<Record<AimName, number>>;

export const only = (name: AimName): Aim => ({ speech: 0, loudness: 0, clean: 0, stations: 0, [name]: 1 });

/** What a set must keep to, whatever the aim. */
export interface Limits {
  /** fastest dial that can be set by hand [Hz per degree], at VHF and below 30 MHz: common practice, no source */
  readonly sharpest: { readonly vhf: number; readonly below: number };
  /** share of the rotation that must be left either side of a wanted station */
  readonly margin: number;
}

export const USUAL_LIMITS: Limits = { sharpest: { vhf: 400e3, below: 20e3 }, margin: 0.02 };

const VHF = 30e6;
/** A set beyond its limits is worth this much less than any other, and less still the further it is beyond them, so that a search is led back. */
export const BEYOND = 1e4;
const MISSED = 2e4;
/** An end of the wanted band off the dial, beside one that is on it and has no margin. */
const UNCOVERED = 2;
/** Best band over what the ear needs from which a set counts as heard for `clean` [dB]: every word's peaks then stand clear of the threshold. */
const HEARD = 0;
/**
 * Points for full intelligibility, for a dB, and for all stations: they make shares of a mixed aim comparable. Among sets that are heard at all each of the four then moves by some tens of
 * points (the demo drawer: 80, 40, 25, 75 between the tenth and the ninetieth of a hundred).
 */
const FULL = { speech: 100, loudness: 1, clean: 1, stations: 100 } as const;
/** Less distortion than this is no better [dB]; and points lost for each dB too quiet. */
const LEAST_DISTORTION = 80;
const QUIET = 3;
/** Parts sets that are the same by their aim: the louder one is better [points per dB]. */
const TIE = 1e-3;

/**
 * Worth of a set by an aim, in points: 100 for full intelligibility, 1 for each dB of headroom, 1 for each dB of less distortion, 100 for all stations that count, shared out between them.
 * A mixed aim takes the mean of these by its shares.
 *
 * Where stations are wanted their mean counts and each must be on the dial; where none is, the one heard best counts. Equal sets are parted by headroom.
 */
export function worth(space: Space, glances: readonly Glance[], aim: Aim, limits: Limits): number {
  const beyond = glances.map((g) => beyondLimits(space, g, limits));
  const whole = space.all ? beyond.reduce((a, b) => a + b, 0) : Math.min(...beyond);
  if (whole > 0) return -BEYOND - whole;
  const kept = glances.filter((_, k) => beyond[k] === 0);
  const total = aim.speech + aim.loudness + aim.clean + aim.stations || 1;
  const points = kept.map((g) => pointsOf(g, aim) / total + TIE * g.headroom);
  const one = space.all ? points.reduce((a, b) => a + b, 0) / points.length : Math.max(...points);
  const heard = kept.filter((g) => g.outcome !== 'silent');
  const stations = heard.length + heard.reduce((s, g) => s + g.sii, 0) / (1 + heard.length);
  return one + ((aim.stations / total) * FULL.stations * stations) / glances.length;
}

function pointsOf(g: Glance, aim: Aim): number {
  const quiet = Math.max(0, HEARD - g.headroom);
  return (
    aim.speech * FULL.speech * g.sii +
    aim.loudness * FULL.loudness * g.headroom +
    // below hearing, each dB too quiet counts more than a dB of distortion saved
    aim.clean * FULL.clean * (Math.min(LEAST_DISTORTION, -g.distortion) - QUIET * quiet)
  );
}

/** By how much a set breaks its limits for one station; 0 where it keeps them. */
export function beyondLimits(space: Space, g: Glance, limits: Limits): number {
  if (g.missing !== null) return MISSED + Math.min(1000, Math.abs(g.missing) * 1e12);
  const sharp = Math.max(0, Math.log(g.hertzPerDegree / sharpestAt(space, g.station, limits)));
  const short = (place: number): number => Math.max(0, limits.margin - edgeOf(place)) / Math.max(limits.margin, 1e-9);
  const band = (g.band ?? []).map((e) => ('place' in e ? short(e.place) : UNCOVERED + Math.min(10, Math.abs(e.missing) * 1e12)));
  return 100 * (sharp + short(g.place) + band.reduce((a, b) => a + b, 0));
}

/** Fastest dial allowed at a station [Hz per degree]. */
export const sharpestAt = (space: Space, station: number, { sharpest }: Limits): number =>
  space.fields[station]!.station.frequency >= VHF ? sharpest.vhf : sharpest.below;

/** Share of the rotation to the nearer end of the dial. */
export const edgeOf = (place: number): number => Math.min(place, 1 - place);
