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
 *
 * E_h is counted positive to the right of someone who faces the mast (bearing rising), E_v upward, both across the line to the mast:
 * for a wave from elevation e the vertical component leans back by e. `arrivalAxes` has the unit vectors. The phase is that at the feed.
 * A horizontal element is counted so that a wave from its broadside gives a positive voltage; from behind, E_h points the other way
 * and the sign turns.
 *
 * An aerial on earth, or on a large conducting surface, stands in the field as it is at that surface (the field of a ground wave is
 * given so): its effective length is that of the wire above the surface alone, its resistance that over the surface.
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
