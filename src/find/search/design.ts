/**
 * One set out of the drawer, as whole numbers: indices into the lists of a space, and counts. Plain data; two designs are the same set if all numbers are.
 */
export interface Design {
  /** of the space's aerials */
  readonly aerial: number;
  /** of JOINTS */
  readonly joint: number;
  /** tap: quarter turns from the earthed end; link: of LINKS, then of NESTED for each former; series capacitor: of the fixed ones; else 0 */
  readonly at: number;
  readonly former: number;
  readonly wire: number;
  /** half turns */
  readonly halves: number;
  /** of PITCHES; 0 for a single turn */
  readonly pitch: number;
  readonly capacitor: number;
  /** fixed capacitor across it: 0 for none, else index + 1 */
  readonly across: number;
  readonly detector: number;
  /** quarter turns from the earthed end; 0 for the whole coil */
  readonly tap: number;
  readonly earpiece: number;
  /** 0 for none, else index + 1 */
  readonly transformer: number;
  /** of the stock's resistors and chokes, likewise */
  readonly load: number;
  readonly bypass: number;
}

/** Aerial, coil and tuning of a design. */
export type RadioDesign = Omit<Design, 'detector' | 'earpiece' | 'transformer' | 'load' | 'bypass'>;

export const GENES = [
  'aerial',
  'joint',
  'at',
  'former',
  'wire',
  'halves',
  'pitch',
  'capacitor',
  'across',
  'detector',
  'tap',
  'earpiece',
  'transformer',
  'load',
  'bypass',
] as const satisfies readonly (keyof Design)[];

/** How the aerial joins: not at all where the coil is the aerial. */
export const JOINTS = ['none', 'direct', 'tap', 'link', 'series-capacitor'] as const;
export const NONE = 0;
export const DIRECT = 1;
export const TAP = 2;
export const LINK = 3;
export const SERIES = 4;

/** Centre to centre of turns over the thickness of the wire. */
export const PITCHES = [1.1, 1.3, 1.6, 2, 2.5, 3] as const;

/** Links beside the coil, on its former and of its wire: turns, and the gap between them [m]. */
export const LINKS = [
  { turns: 1, gap: 1e-3 },
  { turns: 1, gap: 4e-3 },
  { turns: 1, gap: 10e-3 },
  { turns: 2, gap: 1e-3 },
  { turns: 2, gap: 4e-3 },
  { turns: 2, gap: 10e-3 },
  { turns: 4, gap: 4e-3 },
  { turns: 8, gap: 4e-3 },
] as const;

/** Links of the coil's wire on another former, pushed into the coil or over it at its earthed end: turns. */
export const NESTED = [1, 2, 4] as const;

/** A name by which a design is known: all its numbers. */
export const keyOf = (d: Design): string => GENES.map((g) => d[g]).join(' ');
