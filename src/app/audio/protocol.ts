import type { ProgrammeName } from '#engine';

/** What a station is to send. */
export type Sent = { readonly kind: 'own' | ProgrammeName } | { readonly kind: 'wav'; readonly name: string; readonly bytes: ArrayBuffer };

/** A set to be heard: plain data, for the thread that plays it. */
export interface Play {
  /** the set file, and the files it refers to by name */
  readonly text: string;
  readonly files: Readonly<Record<string, string>>;
  /** by name */
  readonly station: string;
  /** of the dial [rad] */
  readonly angle: number;
  readonly sent: Sent;
  /** what there is to hear beside the station */
  readonly with: { readonly neighbours: boolean; readonly room: boolean; readonly hearingLimit: boolean; readonly noise: boolean };
  readonly makeUpGain: number;
  /** the recorded sentences, as a WAV file */
  readonly sentences: ArrayBuffer;
}

/** To the thread that plays. `sink`: where blocks of samples go, and where the sink says that it took one. */
export type ToPlayer =
  | { readonly kind: 'play'; readonly play: Play; readonly sink: MessagePort }
  | { readonly kind: 'turn'; readonly angle: number }
  | { readonly kind: 'gain'; readonly makeUpGain: number };

export type FromPlayer =
  | { readonly kind: 'refused'; readonly why: string }
  | { readonly kind: 'playing'; readonly rate: number; readonly heard: readonly string[]; readonly leftOut: readonly string[] }
  | { readonly kind: 'state'; readonly state: SoundState };

/** How it sounds, four times a second. */
export interface SoundState {
  /** the set's own sound since the last state [dB SPL], at the ear; null in silence */
  readonly own: number | null;
  /** all that is heard, the loudest 0.7 s so far, A-weighted as it stands at the ear [dB(A)] */
  readonly loudestA: number | null;
  /** share of one core that the engine takes */
  readonly load: number;
  /** true where, played at its calibration, it could pass 85 dB(A) */
  readonly loud: boolean;
  /** samples beyond full scale since the last state */
  readonly clipped: number;
}

/** Samples in a block: 10 ms. Blocks that stand ready in the sink: what a turn of the dial has to wait for is 60 ms. */
export const BLOCK = 480;
export const AHEAD = 6;
export const RATE = 48_000;

/** To the thread that writes a sound file. */
export interface ToRecorder {
  readonly play: Play;
  readonly seconds: number;
  /** of the set, for the notes in the file */
  readonly name: string;
}

export type FromRecorder =
  | { readonly kind: 'refused'; readonly why: string }
  | { readonly kind: 'progress'; readonly done: number }
  | { readonly kind: 'written'; readonly bytes: Uint8Array<ArrayBuffer>; readonly clipped: number; readonly level: string };
