import type { Element, Node } from '../circuit/index.ts';
import type { DescribingFunction } from '../detector/index.ts';
import type { Complex } from '../numeric/index.ts';

/** Two nodes between which something hangs; current counts from `from`, through it, to `to`. */
export interface Port {
  readonly from: Node;
  readonly to: Node;
}

/** The radio half as the time engine needs it: everything linear but the source. */
export interface RadioCircuit {
  /** without impedances given by frequency */
  readonly elements: readonly Element[];
  /** the e.m.f. of all stations against earth, behind the aerial's impedance [ohm]; null where there is none (or it stands among the elements) */
  readonly source: { readonly node: Node; readonly impedance: ((frequency: number) => Complex) | null };
  /** one for each detector: its law hangs between the two nodes */
  readonly ports: readonly Port[];
}

/** The audio half, from 0 Hz up. */
export interface AudioCircuit {
  readonly elements: readonly Element[];
  /** one for each detector: its mean current is drawn at `from` and given at `to`; its output voltage stands from `to` to `from` */
  readonly ports: readonly Port[];
  /** the earpiece's terminal, against earth */
  readonly output: Node;
}

/** A receiver with any number of detectors, at any angle of its dial. */
export interface CircuitInTime {
  readonly laws: readonly DescribingFunction[];
  /** @param reference - frequency at which losses are taken [Hz] */
  radio(angle: number, reference: number): RadioCircuit;
  readonly audio: AudioCircuit;
}
