/**
 * The parts of a network. A node is a name; `earth` is the reference. Values are SI; phasors are peak unless a caller keeps rms throughout.
 */
export type Node = string;
export const EARTH: Node = 'earth';

export type Element =
  | { readonly kind: 'resistor'; readonly name: string; readonly a: Node; readonly b: Node; readonly resistance: number }
  | { readonly kind: 'capacitor'; readonly name: string; readonly a: Node; readonly b: Node; readonly capacitance: number }
  | {
      /** one or more windings with their inductance matrix [H], row-major, symmetric, positive definite, each with a resistance of its own if any [ohm]; current flows a to b, dots at a */
      readonly kind: 'windings';
      readonly name: string;
      readonly windings: readonly { readonly name: string; readonly a: Node; readonly b: Node; readonly resistance?: number }[];
      readonly inductance: readonly (readonly number[])[];
    }
  | {
      /** impedance given at each frequency, such as an aerial's */
      readonly kind: 'impedance';
      readonly name: string;
      readonly a: Node;
      readonly b: Node;
      readonly at: (frequency: number) => { readonly re: number; readonly im: number };
    }
  /** ideal voltage source, a positive; `voltage` 0 is a short that can be driven */
  | { readonly kind: 'voltage'; readonly name: string; readonly a: Node; readonly b: Node; readonly re: number; readonly im: number }
  /** ideal current source, current leaves at a into the network */
  | { readonly kind: 'current'; readonly name: string; readonly a: Node; readonly b: Node; readonly re: number; readonly im: number };
