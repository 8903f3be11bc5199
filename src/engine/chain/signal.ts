import { type AerialModel, type Arrival, smallAerialResistance, smallLoopEffectiveLength } from '../aerial/index.ts';
import { SPEED_OF_LIGHT } from '../constants.ts';
import { C, type Complex } from '../numeric/index.ts';
import type { ReceivedField } from '../place/index.ts';
import { AM_AUDIO_LIMIT } from '../programme/index.ts';
import type { SetDescription } from './description.ts';
import { scatteredEmf } from './scattered.ts';

/** One station as the set's aerial hands it on: e.m.f. and source impedance near its carrier. */
export interface Signal {
  readonly received: ReceivedField;
  readonly arrival: Arrival;
  /** open-circuit voltage [V rms] at the carrier */
  readonly emf: number;
  /** effective length toward the station, both polarisations and scattered waves as they add here: emf / field [m] */
  readonly effectiveLength: number;
  /** source impedance near the carrier [ohm]; null where the coil is the aerial and its impedance is the tank's */
  readonly impedance: ((frequency: number) => Complex) | null;
  /** part of the source resistance, or of the coil's, that receives and radiates [ohm]; the rest is loss */
  readonly radiationResistance: number;
}

/**
 * What the aerial makes of a station's field: the wave from the mast, and what is scattered from all round.
 *
 * Horizontal and vertical parts of a mixed wave arrive in unknown phase and are added as powers; a plainly polarised wave has one part only, so
 * nothing is lost by it. The effective length is that at the carrier over the whole swing.
 */
export function signalFrom(
  received: ReceivedField,
  model: AerialModel | null,
  set: SetDescription,
  coilArea: number,
  indoors: boolean,
): Signal {
  const f0 = received.station.frequency;
  const wavelength = SPEED_OF_LIGHT / f0;
  const together = (horizontal: Complex, vertical: Complex, radiationResistance: number): number =>
    Math.hypot(
      C.abs(horizontal) * received.horizontal,
      C.abs(vertical) * received.vertical,
      scatteredEmf(received, indoors, wavelength, radiationResistance),
    );
  const arrival: Arrival = { azimuth: received.bearing, elevation: received.elevation };
  const aerial = set.aerial;
  if (aerial.kind === 'coil' || model === null) {
    const axis = aerial.kind === 'coil' ? aerial.axis : ({ kind: 'vertical' } as const);
    const h = smallLoopEffectiveLength(coilArea, f0, axis, arrival);
    const radiationResistance = smallAerialResistance((2 * Math.PI * coilArea) / wavelength, wavelength);
    const emf = together(h.horizontal, h.vertical, radiationResistance);
    return {
      received,
      arrival,
      emf,
      effectiveLength: received.field > 0 ? emf / received.field : 0,
      impedance: null,
      radiationResistance,
    };
  }
  const mid = model.at(f0, arrival);
  const radiationResistance = Math.max(0, mid.impedance.re - mid.lossResistance);
  const emf = together(mid.horizontal, mid.vertical, radiationResistance);
  return {
    received,
    arrival,
    emf,
    effectiveLength: received.field > 0 ? emf / received.field : 0,
    impedance: impedanceNear(f0, swingOf(received), (f) => model.at(f, arrival).impedance),
    radiationResistance,
  };
}

/** How far from its carrier a station's frequency goes, or its sidebands are [Hz]. */
function swingOf({ station: { modulation } }: ReceivedField): number {
  return modulation.kind === 'fm' ? modulation.deviation : AM_AUDIO_LIMIT;
}

/** The three points stand this much farther out than the swing. */
const BEYOND = 1.25;
/** Greatest error of the interpolation half way between its points, by the impedance; one that is worse is not used. */
const CLOSE = 1e-3;

/**
 * Impedance near a carrier, read at three points and interpolated, since a search asks for it many times; asked anew each time where the aerial is
 * too sharp for that.
 *
 * @param swing - how near [Hz]
 */
function impedanceNear(f0: number, swing: number, exact: (frequency: number) => Complex): (frequency: number) => Complex {
  const step = BEYOND * swing;
  const [low, mid, high] = [exact(f0 - step), exact(f0), exact(f0 + step)];
  const quadratic = (a: number, b: number, c: number, t: number): number => b + t * ((c - a) / 2 + t * ((a + c) / 2 - b));
  const near = (f: number): Complex => {
    const t = (f - f0) / step;
    return { re: Math.max(quadratic(low.re, mid.re, high.re, t), 0), im: quadratic(low.im, mid.im, high.im, t) };
  };
  const close = [f0 - step / 2, f0 + step / 2].every((f) => {
    const truth = exact(f);
    return C.abs(C.sub(near(f), truth)) <= CLOSE * C.abs(truth);
  });
  return close ? near : exact;
}
