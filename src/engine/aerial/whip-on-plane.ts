import { term } from '../figure.ts';
import { straightWireResistance } from './conductor.ts';
import { feedRatio, inducedEmfImpedance, inducedEmfRemarks, resonanceFigure } from './induced-emf.ts';
import { sineCurrent, squareLength } from './sinusoidal-current.ts';
import type { UprightKind } from './upright.ts';
import type { Whip } from './whip-description.ts';

/**
 * Rod on a conducting plane: half of the dipole of twice its height, in impedance and in effective length.
 *
 * The effective length is that against the field at the plane. On the earth that is the whole field of a ground wave. On a roof or
 * a car, several wavelengths across at most, it is the field that would be there without it: towards the horizon the edge of such a plane halves
 * the field that an endless one would double (shadow boundary of edge diffraction), and the two cancel.
 *
 * Source: Balanis, Antenna Theory, 3rd ed., sec. 4.7.4, eq. 4-106.
 */
export function whipOnPlane({ length, diameter, metal }: Whip): UprightKind {
  const radius = diameter / 2;
  const method = 'induced EMF, half of a dipole';
  return {
    method,
    source: 'Balanis, Antenna Theory, 3rd ed., sec. 4.7.4, 8.5',
    state(frequency, k) {
      const pieces = [sineCurrent(k, 0, length, radius, length, 1 / feedRatio(k * length))];
      return {
        pieces,
        over: 'plane',
        feed: 0,
        reactance: inducedEmfImpedance(2 * length, radius, (2 * Math.PI) / k).im / 2,
        loss: straightWireResistance(metal, diameter, frequency) * squareLength(pieces[0]!, k),
      };
    },
    remarks: (_, wavelength) => inducedEmfRemarks(2 * length, diameter, wavelength),
    own: () => [resonanceFigure(2 * length, radius, method)],
    reactance: { formula: 'X = X_dipole(2 h, a) / 2', source: 'Balanis, Antenna Theory, 3rd ed., eqs 4-106, 8-61a' },
    loss: { formula: "R_l = R' * integral of |I(z)/I(0)|^2 dz", source: 'Ramo, Whinnery & Van Duzer, Fields and Waves, sec. 4.5' },
    terms: [term('h', 'height of the rod', length, 'm'), term('a', 'radius of the rod', radius, 'm')],
    holds: 'height 0.025 to 0.325 wavelength, over 25 diameters; plane at least half a wavelength about the rod',
  };
}
