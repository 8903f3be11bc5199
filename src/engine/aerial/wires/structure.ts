import type { Metal } from '../../metals.ts';
import type { Point } from './point.ts';

/** `lossless` is for comparison with theory. */
export type WireMetal = Metal | 'lossless';

/** A straight wire, rod or tube. Ends of wires that coincide are joined; an end on another wire is joined to it there. */
export interface Wire {
  readonly from: Point;
  readonly to: Point;
  /** [m] */
  readonly diameter: number;
  readonly metal: WireMetal;
}

/** A place on a wire: by the wire's number, from 0, and the fraction of the way along it; or by its coordinates. */
export type OnWire = { readonly wire: number; readonly at: number } | { readonly point: Point };

/** Something in series with a wire. Absent members are absent parts: no resistance, no inductance, no capacitor. */
export type Load = { readonly place: OnWire } & (
  | { readonly kind: 'impedance'; readonly resistance: number; readonly reactance: number }
  | { readonly kind: 'series' | 'parallel'; readonly resistance?: number; readonly inductance?: number; readonly capacitance?: number }
);

/**
 * What lies below. `perfect`: a conducting plane at z = 0, by images, in the impedance and in the far field. `real`: the far field
 * alone, by Fresnel's reflection coefficients; the impedance stays that of free space (see ground-reflection.ts for the heights where that holds).
 */
export type Ground =
  | { readonly kind: 'free-space' }
  | { readonly kind: 'perfect' }
  /** relative permittivity; conductivity [S/m] */
  | { readonly kind: 'real'; readonly permittivity: number; readonly conductivity: number };

/** Everything the solver is told. */
export interface WireStructure {
  readonly wires: readonly Wire[];
  /** the gap the set is connected across: in a wire, or between a wire's end and all else that is joined there */
  readonly feed: OnWire;
  readonly loads: readonly Load[];
  readonly ground: Ground;
}
