import { SPEED_OF_LIGHT } from '../constants.ts';
import { term } from '../figure.ts';
import { C } from '../numeric/index.ts';
import { arrivalAxes, dot, elementAxis } from './arrival.ts';
import { metalLossWorking, straightWireResistance } from './conductor.ts';
import type { AerialDescription } from './description.ts';
import { dipoleEffectiveLength, dipoleMetalResistance } from './dipole-current.ts';
import { mustBeNumber, mustBeThin } from './given-checks.ts';
import { inducedEmfImpedance, inducedEmfRemarks, resonanceFigure } from './induced-emf.ts';
import type { AerialAt, AerialModel, Arrival } from './model.ts';
import { sourceFigures } from './source-figures.ts';

type Dipole = Extract<AerialDescription, { kind: 'dipole' }>;

/** Straight dipole by the induced-EMF method: a closed form, balanced feed, nothing near it. */
export function dipoleModel(dipole: Dipole): AerialModel {
  mustBeThin('aerial', dipole.length, dipole.diameter);
  if (dipole.orientation.kind === 'horizontal') mustBeNumber('aerial.orientation.broadside', dipole.orientation.broadside, 'rad');
  const { length, diameter, metal } = dipole;
  const axis = elementAxis(dipole.orientation);
  const at = (frequency: number, arrival: Arrival): AerialAt => {
    const wavelength = SPEED_OF_LIGHT / frequency;
    const axes = arrivalAxes(arrival);
    const thin = inducedEmfImpedance(length, diameter / 2, wavelength);
    const loss = dipoleMetalResistance(length, straightWireResistance(metal, diameter, frequency), wavelength);
    const h = dipoleEffectiveLength(length, wavelength, dot(axis, axes.toward));
    return {
      impedance: { re: thin.re + loss, im: thin.im },
      horizontal: C.complex(h * dot(axis, axes.horizontal)),
      vertical: C.complex(h * dot(axis, axes.vertical)),
      lossResistance: loss,
    };
  };
  const method = 'induced EMF';
  return {
    method,
    source: 'Balanis, Antenna Theory, 3rd ed., sec. 8.5',
    at,
    remarks: (frequency) => inducedEmfRemarks(length, diameter, SPEED_OF_LIGHT / frequency),
    figures(frequency, arrival) {
      const now = at(frequency, arrival);
      const size = [
        term('l', 'length tip to tip', length, 'm'),
        term('a', 'radius of the conductor', diameter / 2, 'm'),
        term('lambda', 'wavelength', SPEED_OF_LIGHT / frequency, 'm'),
      ];
      const holds = '0.05 to 0.65 wavelength, length over 50 diameters; nothing near it';
      const angle = term('cos p', 'cosine of the angle between rod and wave', dot(axis, arrivalAxes(arrival).toward), '1');
      return [
        ...sourceFigures('aerial', method, now, frequency, {
          resistance: {
            formula: 'R_m(k l) / sin^2(k l/2) + R_l',
            terms: [...size, term('R_l', 'resistance of the metal', now.lossResistance, 'ohm')],
            source: 'Balanis, Antenna Theory, 3rd ed., eq. 8-60a',
            holds,
          },
          reactance: {
            formula: 'X_m(k l, a) / sin^2(k l/2)',
            terms: size,
            source: 'Balanis, Antenna Theory, 3rd ed., eq. 8-61a',
            holds,
          },
          loss: metalLossWorking(size, metal, diameter, frequency),
          effectiveLength: {
            formula: 'h = 2 [cos(k l/2 cos p) - cos(k l/2)] / (k sin(k l/2) sin^2 p) * (axis . component of the field)',
            terms: [...size, angle],
            source: 'Balanis, Antenna Theory, 3rd ed., eq. 4-62a',
          },
        }),
        resonanceFigure(length, diameter / 2, method),
      ];
    },
  };
}
