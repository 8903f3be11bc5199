import { ETA0, SPEED_OF_LIGHT } from '../constants.ts';
import { type Figure, term } from '../figure.ts';
import { brent, type Complex, entireCosineIntegral, sineIntegrals } from '../numeric/index.ts';

/**
 * Least ratio of feed current to greatest current along a wire.
 *
 * The sinusoid vanishes at the feed of a full-wave dipole; on a real wire radiation leaves a current in quadrature there. Balanis
 * table 9.1 (second resonance, R = (150 log10(l/2a))^2 / 67 over R_m = 199 ohm) puts the ratio at 0.21 for l/d 5000, 0.29 for 500.
 */
export const LEAST_FEED_CURRENT = 0.2;

/** sin x for an arm of x = k h, kept from zero beyond the quarter wave: the feed current as a part of the greatest. */
export function feedRatio(x: number): number {
  const s = Math.sin(x);
  if (x < Math.PI / 2 || Math.abs(s) >= LEAST_FEED_CURRENT) return s;
  return s < 0 ? -LEAST_FEED_CURRENT : LEAST_FEED_CURRENT;
}

/**
 * Impedance of a centre-fed thin dipole by the induced-EMF method, perfect conductor.
 *
 * With x = k l: R_m = eta/(2 pi) { Cin x + (1/2) sin x [Si 2x - 2 Si x] + (1/2) cos x [2 Cin x - Cin 2x] },
 * X_m = eta/(4 pi) { 2 Si x + cos x [2 Si x - Si 2x] - sin x [2 ln(l/2a) - 2 Cin x + Cin 2x + Cin(2 k a^2/l)] },
 * Z = (R_m + j X_m) / sin^2(x/2). The logarithms of the printed form are gathered, so that no digits are lost on short dipoles.
 *
 * @param length - tip to tip [m]
 * @param radius - of the conductor [m]
 * @param wavelength - [m]
 * @returns [ohm] at the feed
 * Holds for 0 < l < 0.65 wavelength and l/2a above about 50; near a full wave the assumed current has no value at the feed.
 * Source: C. A. Balanis, Antenna Theory, 3rd ed., eqs 8-60a, 8-61a.
 */
export function inducedEmfImpedance(length: number, radius: number, wavelength: number): Complex {
  const k = (2 * Math.PI) / wavelength;
  const x = k * length;
  const sin = Math.sin(x);
  const cos = Math.cos(x);
  const { si: si1, cin: cin1 } = sineIntegrals(x);
  const { si: si2, cin: cin2 } = sineIntegrals(2 * x);
  const thin = 2 * Math.log(length / (2 * radius)) + entireCosineIntegral((2 * k * radius * radius) / length);
  const rm = (ETA0 / (2 * Math.PI)) * (cin1 + 0.5 * sin * (si2 - 2 * si1) + 0.5 * cos * (2 * cin1 - cin2));
  const xm = (ETA0 / (4 * Math.PI)) * (2 * si1 + cos * (2 * si1 - si2) - sin * (thin - 2 * cin1 + cin2));
  const feed = feedRatio(x / 2) ** 2;
  return { re: rm / feed, im: xm / feed };
}

/** Length tip to tip over the wavelength between which the sinusoidal current serves. */
const SHORTEST = 0.05;
const LONGEST = 0.65;
/** Length over diameter below which thickness changes the current itself. */
const THICKEST = 50;

/** Why the method may not be trusted for a dipole, or for the rod that is half of one (length then with its image). */
export function inducedEmfRemarks(length: number, diameter: number, wavelength: number): string[] {
  const remarks: string[] = [];
  const size = length / wavelength;
  if (size < SHORTEST) remarks.push('very short for the wavelength: the feed gap, caps and whatever is near weigh on the reactance');
  if (size > LONGEST && size <= 0.85)
    remarks.push('longer than 0.65 wavelength tip to tip: the assumed sinusoidal current no longer gives the feed impedance well');
  if (size > 0.85)
    remarks.push('near or beyond a full wave tip to tip: the sinusoidal current has no value at the feed, and the impedance is of no use');
  if (length < THICKEST * diameter) remarks.push('thick for its length: thickness changes the current, which this method does not follow');
  return remarks;
}

/** Frequency at which the reactance first vanishes, by the same closed form, as a figure. */
export function resonanceFigure(length: number, radius: number, method: string): Figure {
  const size = brent((s) => inducedEmfImpedance(length, radius, length / s).im, 0.3, 0.55, 1e-9);
  return {
    name: 'aerial.resonance',
    label: 'first resonance',
    value: size === null ? null : (size * SPEED_OF_LIGHT) / length,
    unit: 'Hz',
    method,
    working: {
      formula: 'X(f) = 0',
      terms: [
        term('l', 'length tip to tip, image included', length, 'm'),
        term('a', 'radius', radius, 'm'),
        term('l/lambda', 'length over wavelength', size, '1'),
      ],
      source: 'Balanis, Antenna Theory, 3rd ed., eq. 8-61a',
      holds:
        'a real rod resonates within about 2 % of it; none where the rod is so thick that the reactance does not vanish below 0.55 wavelength',
    },
  };
}
