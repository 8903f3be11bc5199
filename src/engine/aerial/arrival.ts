import type { Orientation } from './description.ts';
import type { Arrival } from './model.ts';

/** East, north, up. */
export type Vector = readonly [number, number, number];

/** Unit vectors of an arriving wave: towards the mast, and the directions in which E_h and E_v are counted positive. */
export interface ArrivalAxes {
  readonly toward: Vector;
  readonly horizontal: Vector;
  readonly vertical: Vector;
}

export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/**
 * Unit vectors of the wave: toward r = (cos e sin b, cos e cos b, sin e), horizontal h = dr/db / cos e, vertical v = dr/de.
 *
 * @returns r, h, v in east, north, up; mutually at right angles
 */
export function arrivalAxes({ azimuth, elevation }: Arrival): ArrivalAxes {
  const sinB = Math.sin(azimuth);
  const cosB = Math.cos(azimuth);
  const sinE = Math.sin(elevation);
  const cosE = Math.cos(elevation);
  return {
    toward: [cosE * sinB, cosE * cosB, sinE],
    horizontal: [cosB, -sinB, 0],
    vertical: [-sinE * sinB, -sinE * cosB, cosE],
  };
}

const UP: Vector = [0, 0, 1];

/** Direction of a straight element; a horizontal one runs to the right of someone who looks along its broadside. */
export function elementAxis(orientation: Orientation): Vector {
  if (orientation.kind === 'vertical') return UP;
  return [Math.cos(orientation.broadside), -Math.sin(orientation.broadside), 0];
}
