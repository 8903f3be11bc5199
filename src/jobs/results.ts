import type { BestDial, Figure, Modulation, Outcome, OutOfReach, Rung, StationReport, Verdict } from '#engine';
import type { UsedPart } from '#set-file';
import { ladderRows, type RungText, verdictSentence } from '#tell';

/** What a set file holds, before anything is worked out about reception. */
export interface Outline {
  readonly name: string;
  readonly notes: string;
  readonly place: string;
  readonly stations: readonly StationOutline[];
  readonly parts: readonly UsedPart[];
  /** of the coil */
  readonly turns: number;
  /** span of the dial [rad], and the frequencies at its ends, aerial and detector joined [Hz]; null where none is found */
  readonly dial: { readonly rotation: number; readonly lowest: number | null; readonly highest: number | null };
}

/** A station of the place, and its field where the aerial stands. */
export interface StationOutline {
  readonly index: number;
  readonly name: string;
  /** [Hz] */
  readonly frequency: number;
  readonly modulation: Modulation['kind'];
  /** [rad] clockwise from true north; [m] */
  readonly bearing: number;
  readonly distance: number;
  /** median [V/m rms], standard deviation from place to place [dB] */
  readonly field: number;
  readonly spread: number;
}

/** One station through the set, from mast to ear. */
export interface StationResult extends StationOutline {
  readonly dial: BestDial | OutOfReach;
  /** where the dial stands [rad]; null where it does not reach */
  readonly angle: number | null;
  /** detuning there, x = 2 Q df / f0 of the tank at rest */
  readonly x: number | null;
  /** best band of speech over threshold and what masks it [dB]; null where the dial does not reach */
  readonly headroom: number | null;
  readonly ladder: readonly LadderRow[];
  readonly verdict: Verdict;
  readonly sentence: string;
  readonly remarks: readonly string[];
}

/** A rung of the ladder, as text and as numbers. */
export interface LadderRow extends RungText {
  readonly stage: Rung['stage'];
  readonly figure: Figure;
  /** what the way from the rung above cost [dB] */
  readonly decibels: number | null;
}

export interface Evaluated {
  readonly stations: readonly StationResult[];
  readonly cautions: readonly string[];
}

/** A change that would help, tried by working out the changed set anew. */
export interface Advice {
  readonly key: string;
  readonly words: string;
  /** rise of the best band's headroom [dB]; null where the station was out of reach before */
  readonly gain: number | null;
  readonly gainWords: string;
  readonly sii: number;
  readonly outcome: Outcome;
}

export interface Advised {
  /** the sentence of the station with the best change in it */
  readonly sentence: string;
  /** best first */
  readonly all: readonly Advice[];
  /** the best of each stage */
  readonly bestByStage: readonly Advice[];
}

export function stationOutline({ received }: StationReport['signal'], index: number): StationOutline {
  const { station, bearing, distance, field, spread } = received;
  return { index, name: station.name, frequency: station.frequency, modulation: station.modulation.kind, bearing, distance, field, spread };
}

export function stationResult(report: StationReport, index: number): StationResult {
  const { dial, heard, verdict, remarks } = report;
  const rungs = heard?.ladder ?? [];
  return {
    ...stationOutline(report.signal, index),
    dial,
    angle: heard?.at.angle ?? null,
    x: heard?.at.x ?? null,
    headroom: heard ? Math.max(...heard.evaluation.hearing.headroom) : null,
    ladder: ladderRows(report).map((row, i) => ({ ...row, stage: rungs[i]!.stage, figure: rungs[i]!.figure, decibels: rungs[i]!.cost })),
    verdict,
    sentence: verdictSentence(report, undefined),
    remarks,
  };
}
