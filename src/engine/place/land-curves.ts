import { knifeEdgeApproximation } from './knife-edge.ts';

/** Coefficients of the land-curve equations at one nominal frequency, 50 % of time. */
interface Coefficients {
  readonly a: readonly [number, number, number, number];
  readonly b: readonly [number, number, number, number, number, number, number, number];
  readonly c: readonly [number, number, number, number, number, number, number];
  readonly d: readonly [number, number];
  /** angle to Fresnel parameter for aerials below the ground around, per degree */
  readonly edgePerDegree: number;
}

/** Source: ITU-R P.1546-1 (2003) Annex 5 section 16 table; the same in P.1546-2 to -4. */
const AT_100_MHZ: Coefficients = {
  a: [0.0814, 0.761, -30.444, 90.226],
  b: [33.6238, 10.8917, 2.3311, 0.4427, 1.256e-7, 1.775, 49.39, 103.01],
  c: [5.4419, 3.7364, 1.9457, 1.845, 415.91, 0.1128, 2.3538],
  d: [10, -1],
  edgePerDegree: 1.35,
};
const AT_600_MHZ: Coefficients = {
  a: [0.0946, 0.8849, -35.399, 92.778],
  b: [51.6386, 10.9877, 2.2113, 0.5384, 4.323e-6, 1.52, 49.52, 97.28],
  c: [6.4701, 2.982, 1.7604, 1.7508, 198.33, 0.1432, 2.269],
  d: [5, 1.2],
  edgePerDegree: 3.31,
};

/** Heights that have a curve [m]. */
export const NOMINAL_HEIGHTS = [10, 20, 37.5, 75, 150, 300, 600, 1200] as const;

/** What of the equations depends on the height alone, worked out once for each curve. */
interface Curve {
  readonly slope: number;
  readonly start: number;
  readonly offset: number;
  readonly offsetScale: number;
  readonly offsetMiddle: number;
  readonly sharpness: number;
}

interface CurveFamily {
  readonly coefficients: Coefficients;
  readonly curves: readonly Curve[];
  /** correction of a height of -10 m [dB] */
  readonly sunken: number;
}

const LOW = family(AT_100_MHZ);
const HIGH = family(AT_600_MHZ);

function family(coefficients: Coefficients): CurveFamily {
  const { a, c, d } = coefficients;
  const curves = NOMINAL_HEIGHTS.map((height): Curve => {
    const k = Math.log2(height / 9.375);
    return {
      slope: a[0] * k * k + a[1] * k + a[2],
      start: 0.1995 * k * k + 1.8671 * k + a[3],
      offset: c[5] * k ** c[6],
      offsetScale: (c[0] / 2) * k,
      offsetMiddle: c[2] + c[3] ** k / c[4],
      sharpness: d[0] + d[1] * Math.sqrt(k),
    };
  });
  return { coefficients, curves, sunken: sunkenCorrection(coefficients, -10) };
}

/** Free-space field of 1 kW e.r.p. as the Recommendation rounds it [dB re 1 uV/m]; distance [km]. */
export const freeSpaceLevel = (kilometres: number): number => 106.9 - 20 * Math.log10(kilometres);

/**
 * Field of 1 kW e.r.p. on a nominal land curve.
 *
 * E1 = (a0 k^2 + a1 k + a2) L + 0.1995 k^2 + 1.8671 k + a3, k = log2(h1/9.375), L = log10 d;
 * E2 = b0[exp(-b4 10^(L^b5)) - 1] + b1 exp(-((L - b2)/b3)^2) - b6 L + b7 + (c0/2) k [1 - tanh(c1(L - c2 - c3^k/c4))] + c5 k^c6;
 * the lower of the two and of free space, with rounded corners.
 *
 * @param l - log10 of the distance [km], not below 0
 * @returns [dB re 1 uV/m], receiving aerial 10 m high, 50 % of time and places
 */
function onCurve({ coefficients: { b, c } }: CurveFamily, curve: Curve, l: number, freeSpace: number): number {
  const near = curve.slope * l + curve.start;
  const reference = b[0] * (Math.exp(-b[4] * 10 ** (l ** b[5])) - 1) + b[1] * Math.exp(-(((l - b[2]) / b[3]) ** 2)) - b[6] * l + b[7];
  const far = reference + curve.offsetScale * (1 - Math.tanh(c[1] * (l - curve.offsetMiddle))) + curve.offset;
  return softLower(softLower(near, far, curve.sharpness), freeSpace, 8);
}

/** -p log10(10^(-x/p) + 10^(-y/p)) */
function softLower(x: number, y: number, p: number): number {
  const low = Math.min(x, y);
  return low - p * Math.log10(1 + 10 ** (-Math.abs(x - y) / p));
}

/** Correction for a transmitting aerial below the ground around it [dB]: C_h1 = 6.03 - J(nu), nu = K arctan(-h1/9000), degrees. */
function sunkenCorrection({ edgePerDegree }: Coefficients, height: number): number {
  return 6.03 - knifeEdgeApproximation((edgePerDegree * Math.atan(-height / 9000) * 180) / Math.PI);
}

function atHeight(set: CurveFamily, height: number, l: number, freeSpace: number): number {
  const { curves } = set;
  if (height < 10) {
    const ten = onCurve(set, curves[0]!, l, freeSpace);
    const twenty = onCurve(set, curves[1]!, l, freeSpace);
    const zero = ten + 0.5 * (ten - twenty + set.sunken);
    return height >= 0 ? zero + 0.1 * height * (ten - zero) : zero + sunkenCorrection(set.coefficients, height);
  }
  let i = 0;
  while (i < NOMINAL_HEIGHTS.length - 2 && height > NOMINAL_HEIGHTS[i + 1]!) i++;
  const below = onCurve(set, curves[i]!, l, freeSpace);
  if (height === NOMINAL_HEIGHTS[i]) return below;
  const above = onCurve(set, curves[i + 1]!, l, freeSpace);
  const share = Math.log(height / NOMINAL_HEIGHTS[i]!) / Math.log(NOMINAL_HEIGHTS[i + 1]! / NOMINAL_HEIGHTS[i]!);
  return Math.min(below + share * (above - below), freeSpace);
}

export interface LandCurveField {
  /** at 100 MHz [dB re 1 uV/m for 1 kW e.r.p.] */
  readonly at100MHz: number;
  /** what the station's own frequency adds [dB] */
  readonly frequencyStep: number;
}

/**
 * Field of 1 kW e.r.p. over land by the broadcast curves, receiving aerial 10 m high, 50 % of time, 50 % of places.
 *
 * Between nominal heights, and over 1200 m, linear in log h1; 0 to 10 m E0 + 0.1 h1 (E10 - E0), E0 = E10 + 0.5 (C_1020 + C_h1neg10); below 0 by
 * C_h1. Frequency: linear in log f through the 100 and 600 MHz curves, below 100 MHz carried on.
 *
 * @param distance - [m], 1 km or more
 * @param height - transmitting height h1 [m]
 * @param frequency - [Hz]
 * Holds for: 1 to 1000 km; 30 MHz to 600 MHz. The equations give the tabulated curves to 0.001 dB from 37.5 m up, 0.2 to 0.5 dB high at 10 and 20 m.
 * Source: ITU-R P.1546-1 Annex 5 sections 4, 6, 16 (heights and frequency the same in P.1546-6).
 */
export function landCurveField(distance: number, height: number, frequency: number): LandCurveField {
  const kilometres = distance / 1e3;
  const l = Math.max(0, Math.log10(kilometres));
  const freeSpace = freeSpaceLevel(kilometres);
  const at100MHz = atHeight(LOW, height, l, freeSpace);
  const share = Math.log(frequency / 100e6) / Math.log(6);
  const frequencyStep = share === 0 ? 0 : share * (atHeight(HIGH, height, l, freeSpace) - at100MHz);
  return { at100MHz, frequencyStep };
}
