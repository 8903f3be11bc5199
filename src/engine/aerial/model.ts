import type { Figure } from '../figure.ts';
import type { Complex } from '../numeric/index.ts';

/** Where the wave comes from, seen from the aerial. */
export interface Arrival {
  /** bearing to the mast [rad], clockwise from true north */
  readonly azimuth: number;
  /** above the horizon [rad] */
  readonly elevation: number;
}

/**
 * The aerial as a source at one frequency, for one arrival.
 *
 * Open-circuit voltage [V rms] = horizontal * E_h + vertical * E_v, fields in V/m rms. The pattern is that of free space:
 * reflection from the ground, clutter and walls belong to `place` and are never put in twice.
 */
export interface AerialAt {
  /** terminal impedance [ohm] */
  readonly impedance: Complex;
  /** complex effective length for the horizontal and the vertical component of the field [m] */
  readonly horizontal: Complex;
  readonly vertical: Complex;
  /** the part of the resistance that heats metal, earth or feeder [ohm] */
  readonly lossResistance: number;
}

/** Any aerial, whether by closed form, by given values, or from its wires. */
export interface AerialModel {
  /** a few words, for the reader: `induced EMF`, `given values` */
  readonly method: string;
  readonly source: string;
  at(frequency: number, arrival: Arrival): AerialAt;
  /** why the model may not be trusted at this frequency; empty where it may */
  remarks(frequency: number): readonly string[];
  figures(frequency: number, arrival: Arrival): readonly Figure[];
}
