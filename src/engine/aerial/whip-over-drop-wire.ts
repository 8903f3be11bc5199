import { term } from '../figure.ts';
import { PLAIN_WIRE, straightWireResistance } from './conductor.ts';
import { feedRatio, inducedEmfRemarks } from './induced-emf.ts';
import { reactanceOfCurrent } from './reactance-of-current.ts';
import { sineCurrent, squareLength } from './sinusoidal-current.ts';
import type { UprightKind } from './upright.ts';
import type { Counterpoise, Whip } from './whip-description.ts';

/**
 * Rod above, wire hanging below: an upright dipole fed off its middle, in free space.
 *
 * Each arm carries the sinusoid that vanishes at its end, equal at the feed: I = sin k(h1 - z)/sin k h1 above, sin k(h2 + z)/sin k h2 below.
 * Resistance by the power this current radiates, reactance by the induced-EMF integral over both arms: with equal arms it is the dipole,
 * with unequal ones it keeps their coupling. Beside a moment method (tests/reference/aerial/asymmetric-dipole.json): gain, and so available
 * power, within 2 %; X within 6 % up to seven to one; R high by a tenth at 2 : 1 and by half at 7 : 1, low by a third where both arms near 0.33
 * wavelength.
 *
 * Source: Jordan & Balmain, Electromagnetic Waves and Radiating Systems, sec. 14; R. W. P. King, Theory of Linear Antennas, asymmetrical dipole.
 */
export function whipOverDropWire(whip: Whip, drop: Extract<Counterpoise, { kind: 'drop-wire' }>): UprightKind {
  const above = whip.length;
  const below = drop.length;
  return {
    method: 'induced EMF, two arms',
    source: 'Jordan & Balmain, Electromagnetic Waves and Radiating Systems, sec. 14',
    state(frequency, k) {
      const rod = sineCurrent(k, 0, above, whip.diameter / 2, above, 1 / feedRatio(k * above));
      const wire = sineCurrent(k, -below, 0, drop.diameter / 2, -below, -1 / feedRatio(k * below));
      const pieces = [wire, rod];
      return {
        pieces,
        over: 'space',
        feed: 0,
        reactance: reactanceOfCurrent(pieces, k, 'space'),
        loss:
          straightWireResistance(whip.metal, whip.diameter, frequency) * squareLength(rod, k) +
          straightWireResistance(PLAIN_WIRE, drop.diameter, frequency) * squareLength(wire, k),
      };
    },
    remarks: (_, wavelength) => [
      ...new Set([
        ...inducedEmfRemarks(2 * Math.max(above, below), Math.max(whip.diameter, drop.diameter), wavelength),
        ...(above + below < 0.05 * wavelength ? inducedEmfRemarks(above + below, whip.diameter, wavelength) : []),
      ]),
    ],
    own: () => [],
    reactance: {
      formula: 'X = eta/(4 pi k) * Re sum of J_i * integral of I*(z) e^(-jkR_i)/R_i dz',
      source: 'Jordan & Balmain, Electromagnetic Waves and Radiating Systems, sec. 14',
      holds: 'arms up to 0.33 wavelength each',
    },
    loss: {
      formula: "R_l = sum over rod and wire of R' * integral of |I(z)/I(0)|^2 dz",
      source: 'Ramo, Whinnery & Van Duzer, Fields and Waves, sec. 4.5; drop wire taken as copper',
    },
    terms: [
      term('h1', 'length of the rod', above, 'm'),
      term('a1', 'radius of the rod', whip.diameter / 2, 'm'),
      term('h2', 'length of the drop wire', below, 'm'),
      term('a2', 'radius of the drop wire', drop.diameter / 2, 'm'),
    ],
    holds: 'arms up to 0.33 wavelength each; the drop wire hangs straight down, clear of the body and the table',
  };
}
