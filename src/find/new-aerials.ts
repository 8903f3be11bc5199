import { type AerialDescription, designBeam, SPEED_OF_LIGHT, type Station, type WireShape } from '#engine';

/** Aerials that a builder could put up in place of what there is, computed from their wires. */

type Beam = Extract<WireShape, { kind: 'beam' }>;

/** Usual tube [m], thinner where that would be no thin wire; and the boom of the shortest published beam [wavelengths]. */
const tube = (wavelength: number): number => Math.min(8e-3, wavelength / 300);
const BOOM = 0.4;
/** Beams tried by the search: it is then within some 0.02 dB of where it would rest. */
const TRIALS = 25;
/** Designs are made for the FM band's middle and so many times as high and low. */
const ANCHOR = 98e6;
const RATIO = 1.2;

/** Designs by the number of their band. */
const designs = new Map<number, Beam>();

/**
 * A three-element beam for a station, of 8 mm tube, most power into 75 ohm.
 *
 * Designed once for all stations within a tenth of each other and cut in proportion to the wavelength: the tube, which stays as it is, then asks for a millimetre more
 * or less at most. What it does is computed from the wires as they are cut.
 */
export function beamFor(station: Station, bearing: number, height: number): { readonly aerial: AerialDescription; readonly boom: number } {
  const band = Math.round(Math.log(station.frequency / ANCHOR) / Math.log(RATIO));
  const designed = ANCHOR * RATIO ** band;
  const { reflector, driven, directors, ...rest } = designs.get(band) ?? design(band, designed);
  const k = designed / station.frequency;
  return {
    aerial: {
      kind: 'wires',
      shape: {
        ...rest,
        reflector: reflector && { length: k * reflector.length, behind: k * reflector.behind },
        driven: { ...driven, length: k * driven.length },
        directors: directors.map((d) => ({ length: k * d.length, ahead: k * d.ahead })),
        polarisation: station.polarisation === 'vertical' ? 'vertical' : 'horizontal',
        bearing,
      },
      height,
      ground: { kind: 'free-space' },
    },
    boom: (BOOM * SPEED_OF_LIGHT) / station.frequency,
  };
}

function design(band: number, frequency: number): Beam {
  const wavelength = SPEED_OF_LIGHT / frequency;
  const { best } = designBeam({
    frequency,
    boom: BOOM * wavelength,
    elements: 3,
    diameter: tube(wavelength),
    metal: 'aluminium',
    polarisation: 'horizontal',
    bearing: 0,
    driven: { kind: 'straight' },
    goal: { kind: 'impedance', resistance: 75, reactance: 0 },
    trials: TRIALS,
  });
  designs.set(band, best.shape);
  return best.shape;
}

/** A half-wave dipole of 4 mm copper, a little short as its thickness asks. */
export function dipoleFor(
  station: Station,
  bearing: number,
  height: number,
): { readonly aerial: AerialDescription; readonly length: number } {
  const length = (0.475 * SPEED_OF_LIGHT) / station.frequency;
  return {
    aerial: {
      kind: 'wires',
      shape: {
        kind: 'dipole',
        length,
        diameter: 4e-3,
        metal: 'copper',
        orientation: station.polarisation === 'vertical' ? { kind: 'vertical' } : { kind: 'horizontal', broadside: bearing },
        includedAngle: Math.PI,
        bend: 'down',
        slope: 0,
      },
      height,
      ground: { kind: 'free-space' },
    },
    length,
  };
}
