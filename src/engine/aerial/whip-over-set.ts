import { EPSILON0 } from '../constants.ts';
import { term } from '../figure.ts';
import { straightWireResistance } from './conductor.ts';
import { feedRatio, inducedEmfRemarks } from './induced-emf.ts';
import { reactanceOfCurrent } from './reactance-of-current.ts';
import { sineCurrent, squareLength } from './sinusoidal-current.ts';
import type { UprightKind } from './upright.ts';
import type { Whip } from './whip-description.ts';

/**
 * Capacitance of the set to space over 4 pi eps0 s, s its largest size: a box of sides 3 : 2 : 1.
 *
 * Computed by surface charge (tests/reference/aerial/box-capacitance.py). A flat disc has 0.318, a ball 0.5.
 */
const BOX = 0.4253;
const FLATTEST = 1 / Math.PI;
const ROUNDEST = 0.5;

/**
 * Length over radius of the rod with the box's capacitance: u with asinh u - sqrt(1 + 1/u^2) + 1/u = 1/(2 * 0.4253), the left side being the
 * mean potential of an evenly charged rod (Howe 1914, without his u >> 1).
 */
const SLENDERNESS = 3.3368;

/**
 * Capacitance to space of a set of that size.
 *
 * C = 4 pi eps0 * 0.425 s
 *
 * @param size - largest side [m]
 * @returns [F], and the capacitance of the flattest (a disc) and the roundest (a ball) body of that size
 */
export function setCapacitance(size: number): { readonly likely: number; readonly low: number; readonly high: number } {
  const unit = 4 * Math.PI * EPSILON0 * size;
  return { likely: BOX * unit, low: FLATTEST * unit, high: ROUNDEST * unit };
}

/**
 * Rod on the set alone: the set is the other arm, as long as the set's largest size and of the same capacitance to space.
 *
 * Current and impedance as with a drop wire. Where the set is small against the wavelength the arm's reactance is that of its capacitance
 * and it adds half its size to the effective length. Beside the moment method on such a box: gain within 1 %, X within 6 % and 20 ohm, R up to
 * a third high. An estimate all the same: hand, phones' cord and table join in, and are not in it.
 */
export function whipOverSet(whip: Whip, size: number): UprightKind {
  const capacitance = setCapacitance(size);
  const method = 'induced EMF, set as other arm (estimate)';
  return {
    method,
    source: 'Jordan & Balmain, Electromagnetic Waves and Radiating Systems, sec. 14; capacitance of a box 3 : 2 : 1: estimate of the shape',
    state(frequency, k) {
      const rod = sineCurrent(k, 0, whip.length, whip.diameter / 2, whip.length, 1 / feedRatio(k * whip.length));
      const body = sineCurrent(k, -size, 0, size / SLENDERNESS, -size, -1 / feedRatio(k * size));
      const pieces = [body, rod];
      return {
        pieces,
        over: 'space',
        feed: 0,
        reactance: reactanceOfCurrent(pieces, k, 'space'),
        loss: straightWireResistance(whip.metal, whip.diameter, frequency) * squareLength(rod, k),
      };
    },
    remarks(_, wavelength) {
      const remarks = inducedEmfRemarks(2 * whip.length, whip.diameter, wavelength);
      remarks.push('the set stands for the other half of the aerial by its size alone: hand, phones and table change it');
      if (size > 0.1 * wavelength) remarks.push('the set is more than a tenth of a wavelength across: its own shape matters');
      return remarks;
    },
    own: () => [
      {
        name: 'aerial.counterpoise.capacitance',
        label: 'capacitance of the set to space',
        value: capacitance.likely,
        unit: 'F',
        method: 'box 3 : 2 : 1 (estimate)',
        low: capacitance.low,
        high: capacitance.high,
        working: {
          formula: 'C = 4 pi eps0 * 0.425 s',
          terms: [term('s', 'largest size of the set', size, 'm')],
          source: 'surface-charge calculation for a box of sides 3 : 2 : 1; estimate, as the shape is not given',
          holds: 'disc 0.318 to ball 0.5 in place of 0.425',
        },
      },
    ],
    reactance: {
      formula: 'X = eta/(4 pi k) * Re sum of J_i * integral of I*(z) e^(-jkR_i)/R_i dz',
      source: 'Jordan & Balmain, Electromagnetic Waves and Radiating Systems, sec. 14',
      holds: 'an estimate: some 20 % either way with the shape of the set',
    },
    loss: {
      formula: "R_l = R' * integral of |I(z)/I(0)|^2 dz over the rod",
      source: 'Ramo, Whinnery & Van Duzer, Fields and Waves, sec. 4.5; loss in the set itself left out',
    },
    terms: [
      term('h', 'length of the rod', whip.length, 'm'),
      term('a', 'radius of the rod', whip.diameter / 2, 'm'),
      term('s', 'largest size of the set', size, 'm'),
    ],
    holds: 'rod up to 0.33 wavelength, set below a tenth; an estimate',
  };
}
