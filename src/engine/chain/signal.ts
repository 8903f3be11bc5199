import { type AerialModel, type Arrival, smallAerialResistance, smallLoopEffectiveLength } from '../aerial/index.ts';
import { SPEED_OF_LIGHT } from '../constants.ts';
import { C, type Complex } from '../numeric/index.ts';
import type { ReceivedField } from '../place/index.ts';
import type { SetDescription } from './description.ts';

/** One station as the set's aerial hands it on: e.m.f. and source impedance near its carrier. */
export interface Signal {
  readonly received: ReceivedField;
  readonly arrival: Arrival;
  /** open-circuit voltage [V rms] at the carrier */
  readonly emf: number;
  /** effective length toward the station, both polarisations as they add here: emf / field [m] */
  readonly effectiveLength: number;
  /** source impedance near the carrier [ohm]; null where the coil is the aerial and its impedance is the tank's */
  readonly impedance: ((frequency: number) => Complex) | null;
  /** part of the source resistance, or of the coil's, that receives and radiates [ohm]; the rest is loss */
  readonly radiationResistance: number;
}

/**
 * What the aerial makes of a station's field.
 *
 * Horizontal and vertical parts of a mixed wave arrive in unknown phase and are added as powers; a plainly polarised wave has one part only, so
 * nothing is lost by it. The impedance is read at three points about the carrier and interpolated, since a search asks for it many times.
 */
export function signalFrom(received: ReceivedField, model: AerialModel | null, set: SetDescription, coilArea: number): Signal {
  const f0 = received.station.frequency;
  const arrival: Arrival = { azimuth: received.bearing, elevation: received.elevation };
  const aerial = set.aerial;
  if (aerial.kind === 'coil' || model === null) {
    const axis = aerial.kind === 'coil' ? aerial.axis : ({ kind: 'vertical' } as const);
    const h = smallLoopEffectiveLength(coilArea, f0, axis, arrival);
    const wavelength = SPEED_OF_LIGHT / f0;
    const emf = Math.hypot(C.abs(h.horizontal) * received.horizontal, C.abs(h.vertical) * received.vertical);
    return {
      received,
      arrival,
      emf,
      effectiveLength: received.field > 0 ? emf / received.field : 0,
      impedance: null,
      radiationResistance: smallAerialResistance((2 * Math.PI * coilArea) / wavelength, wavelength),
    };
  }
  const step = 0.005 * f0;
  const low = model.at(f0 - step, arrival).impedance;
  const mid = model.at(f0, arrival);
  const high = model.at(f0 + step, arrival).impedance;
  const emf = Math.hypot(C.abs(mid.horizontal) * received.horizontal, C.abs(mid.vertical) * received.vertical);
  const quadratic = (a: number, b: number, c: number, t: number): number => b + t * ((c - a) / 2 + t * ((a + c) / 2 - b));
  return {
    received,
    arrival,
    emf,
    effectiveLength: received.field > 0 ? emf / received.field : 0,
    impedance: (f) => {
      const t = (f - f0) / step;
      return {
        re: Math.max(quadratic(low.re, mid.impedance.re, high.re, t), 0),
        im: quadratic(low.im, mid.impedance.im, high.im, t),
      };
    },
    radiationResistance: Math.max(0, mid.impedance.re - mid.lossResistance),
  };
}
