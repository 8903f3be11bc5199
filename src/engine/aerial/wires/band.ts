import { barycentric, C, fitRational, type RationalBasis } from '../../numeric/index.ts';
import type { AerialAt, Arrival } from '../model.ts';
import { currentMoment } from './effective-length.ts';
import { loadImpedance } from './load-impedance.ts';
import { metalHeat } from './loss-resistance.ts';
import { type Discretised, halfCurrent, solveWires, type WireSolution } from './solve-wires.ts';

/** The currents over a band of frequencies from a few solutions, by rational interpolation. */
export interface Band {
  readonly from: number;
  readonly to: number;
  readonly discretised: Discretised;
  readonly samples: readonly WireSolution[];
  readonly basis: RationalBasis;
  /** form of the heat in the metal over the supporting samples, at four frequencies */
  readonly metalHeat: readonly { readonly frequency: number; readonly form: Float64Array }[];
  /** current through each load at each supporting sample, real and imaginary in turn */
  readonly loadCurrents: readonly Float64Array[];
  /** greatest error found where the interpolation was tried before a sample was added there, over the magnitude of impedance or length */
  readonly error: number;
}

/** Wanted agreement of the interpolated impedance and effective length with a solution. */
const TOLERANCE = 1e-5;
const MOST_SAMPLES = 40;
/** Directions in which the effective length is tried, none of them a symmetry of anything [rad]. */
const TRIED: readonly Arrival[] = [
  { azimuth: 0.3, elevation: 0.2 },
  { azimuth: 2.1, elevation: -0.4 },
  { azimuth: 4.4, elevation: 0.9 },
  { azimuth: 5.6, elevation: 0.03 },
];

/**
 * Solves at as few frequencies as the band needs.
 *
 * The currents for 1 V at the feed are rational functions of frequency with common poles, the aerial's own resonances; so they are
 * interpolated as one family, and impedance and effective length follow from them. Starting from four Chebyshev points, a sample is added where this
 * fit and the one before differ most, until two additions in turn were foretold to 1e-5 in impedance and effective length.
 *
 * Source: fit as in numeric/rational.ts; that the poles are common: C. E. Baum, the singularity expansion method, in Transient
 * Electromagnetic Fields (ed. Felsen, 1976).
 */
export function solveBand(discretised: Discretised, from: number, to: number): Band {
  const scaled = (f: number) => (2 * f - from - to) / (to - from);
  const samples: WireSolution[] = [];
  const sample = (f: number): WireSolution => {
    const s = solveWires(discretised, f) ?? still(discretised, f);
    samples.push(s);
    return s;
  };
  for (let i = 0; i < 4; i++) sample((from + to) / 2 - ((to - from) / 2) * Math.cos((Math.PI * i) / 3));
  const refit = () =>
    fitRational(
      Float64Array.from(samples, (s) => scaled(s.frequency)),
      samples.map((s) => s.re),
      samples.map((s) => s.im),
      TOLERANCE / 100,
    );
  const band = (basis: RationalBasis, error: number): Band => ({
    from,
    to,
    discretised,
    samples: [...samples],
    basis,
    metalHeat: [],
    loadCurrents: [],
    error,
  });
  let before: Band | null = null;
  let now = band(refit(), 1);
  let error = 1;
  for (let passed = 0; passed < 2 && samples.length < MOST_SAMPLES; ) {
    const f = mostDoubtful(now, before, samples);
    const foretold = now;
    error = misjudged(foretold, sample(f));
    passed = error < TOLERANCE ? passed + 1 : 0;
    before = foretold;
    now = band(refit(), error);
  }
  return withLosses(band(now.basis, error));
}

/**
 * The heat is a square of the currents and no rational function; but as a form over the samples its coefficients change only with the skin
 * effect, slowly: a cubic through four frequencies carries them.
 */
function withLosses(b: Band): Band {
  const sets = [...b.basis.index].map((k) => b.samples[k]!);
  const frequencies = [0, 1, 2, 3].map((i) => b.from + ((b.to - b.from) * i) / 3);
  return {
    ...b,
    metalHeat: frequencies.map((frequency) => ({ frequency, form: metalHeat(b.discretised, frequency, sets) })),
    loadCurrents: b.discretised.loads.map(({ half }) =>
      Float64Array.from(
        sets.flatMap((s) => {
          const c = halfCurrent(b.discretised.mesh, half, s.re, s.im);
          return [c.re, c.im];
        }),
      ),
    ),
  };
}

/** A matrix that cannot be solved stands for no current at all. */
function still(d: Discretised, frequency: number): WireSolution {
  return { frequency, re: new Float64Array(d.mesh.unknowns), im: new Float64Array(d.mesh.unknowns), admittance: C.complex(1e-12) };
}

/** Where the two fits differ most, or, before there are two, the middle of the widest gap. */
function mostDoubtful(now: Band, before: Band | null, samples: readonly WireSolution[]): number {
  const taken = samples.map((s) => s.frequency).sort((a, b) => a - b);
  let best = { f: 0, doubt: -1 };
  for (let i = 0; i + 1 < taken.length; i++)
    for (const part of [1 / 4, 1 / 2, 3 / 4]) {
      const f = taken[i]! + part * (taken[i + 1]! - taken[i]!);
      const gap = (taken[i + 1]! - taken[i]!) / (now.to - now.from);
      const doubt = before ? C.abs(C.sub(admittance(now, f), admittance(before, f))) * gap : part === 1 / 2 ? gap : 0;
      if (doubt > best.doubt) best = { f, doubt };
    }
  return best.f;
}

const weights = new Float64Array(2 * MOST_SAMPLES);

function admittance(b: Band, f: number): { re: number; im: number } {
  barycentric(b.basis, (2 * f - b.from - b.to) / (b.to - b.from), weights);
  let re = 0;
  let im = 0;
  for (let j = 0; j < b.basis.index.length; j++) {
    const y = b.samples[b.basis.index[j]!]!.admittance;
    re += weights[2 * j]! * y.re - weights[2 * j + 1]! * y.im;
    im += weights[2 * j]! * y.im + weights[2 * j + 1]! * y.re;
  }
  return { re, im };
}

/** Error of the fit at a frequency now solved, in impedance and in effective length. */
function misjudged(b: Band, truth: WireSolution): number {
  const fitted = interpolate(b, truth.frequency);
  const z = C.inv(truth.admittance);
  let error = C.abs(C.sub(C.inv(fitted.admittance), z)) / C.abs(z);
  let top = 0;
  let worst = 0;
  for (const arrival of TRIED) {
    const length = (s: WireSolution) => {
      const n = currentMoment(b.discretised.mesh, b.discretised.feedPoint, s.frequency, s.re, s.im, arrival);
      return [C.div(n.horizontal, s.admittance), C.div(n.vertical, s.admittance)] as const;
    };
    const exact = length(truth);
    // the chain interpolates the moment itself, not the currents: try that
    const [mh, mv] = interpolatedMoment(b, truth.frequency, momentsOf(b, arrival));
    const got = [C.div(mh, fitted.admittance), C.div(mv, fitted.admittance)] as const;
    for (let i = 0; i < 2; i++) {
      top = Math.max(top, C.abs(exact[i]!));
      worst = Math.max(worst, C.abs(C.sub(got[i]!, exact[i]!)));
    }
  }
  if (top > 0) error = Math.max(error, worst / top);
  return error;
}

/** Currents at a frequency between the samples. */
export function interpolate(b: Band, frequency: number): WireSolution {
  const n = b.discretised.mesh.unknowns;
  const re = new Float64Array(n);
  const im = new Float64Array(n);
  const y = admittance(b, frequency);
  for (let j = 0; j < b.basis.index.length; j++) {
    const s = b.samples[b.basis.index[j]!]!;
    const wr = weights[2 * j]!;
    const wi = weights[2 * j + 1]!;
    for (let i = 0; i < n; i++) {
      re[i] = re[i]! + wr * s.re[i]! - wi * s.im[i]!;
      im[i] = im[i]! + wr * s.im[i]! + wi * s.re[i]!;
    }
  }
  return { frequency, re, im, admittance: y };
}

/**
 * Integrals of the currents at each supporting sample towards one arrival: four numbers a sample, horizontal then vertical.
 *
 * @param standing - the aerial is joined to the ground and stands in the field as it is at the surface: the mean over the direct and the
 * reflected ray of unit field, phase at the surface under the feed
 */
export function momentsOf(b: Band, arrival: Arrival, standing = false): Float64Array {
  const out = new Float64Array(4 * b.basis.index.length);
  const { mesh, feedPoint } = b.discretised;
  const origin = standing ? { ...feedPoint, z: 0 } : feedPoint;
  b.basis.index.forEach((k, j) => {
    const s = b.samples[k]!;
    const n = currentMoment(mesh, origin, s.frequency, s.re, s.im, arrival);
    if (standing) {
      // a perfect plane turns the horizontal field about and leaves the upright one: nothing level is left at the surface
      const below = currentMoment(mesh, origin, s.frequency, s.re, s.im, { azimuth: arrival.azimuth, elevation: -arrival.elevation });
      const v = C.scale(C.add(n.vertical, below.vertical), 1 / 2);
      out.set([0, 0, v.re, v.im], 4 * j);
    } else out.set([n.horizontal.re, n.horizontal.im, n.vertical.re, n.vertical.im], 4 * j);
  });
  return out;
}

function interpolatedMoment(b: Band, frequency: number, moments: Float64Array) {
  barycentric(b.basis, (2 * frequency - b.from - b.to) / (b.to - b.from), weights);
  let hr = 0;
  let hi = 0;
  let vr = 0;
  let vi = 0;
  for (let j = 0; j < b.basis.index.length; j++) {
    const wr = weights[2 * j]!;
    const wi = weights[2 * j + 1]!;
    hr += wr * moments[4 * j]! - wi * moments[4 * j + 1]!;
    hi += wr * moments[4 * j + 1]! + wi * moments[4 * j]!;
    vr += wr * moments[4 * j + 2]! - wi * moments[4 * j + 3]!;
    vi += wr * moments[4 * j + 3]! + wi * moments[4 * j + 2]!;
  }
  return [
    { re: hr, im: hi },
    { re: vr, im: vi },
  ] as const;
}

/** The aerial as a source between the samples. */
export function sourceAt(b: Band, frequency: number, moments: Float64Array): AerialAt {
  const y = admittance(b, frequency);
  const [h, v] = interpolatedMoment(b, frequency, moments);
  return {
    impedance: C.inv(y),
    horizontal: C.div(h, y),
    vertical: C.div(v, y),
    lossResistance: interpolatedHeat(b, frequency) / C.abs2(y),
  };
}

/** Heat in metal and loads with 1 V rms at the feed [W]; uses the weights left by the last interpolation at the same frequency. */
function interpolatedHeat(b: Band, frequency: number): number {
  const n = b.basis.index.length;
  let power = 0;
  b.metalHeat.forEach(({ frequency: at, form }, i) => {
    let lagrange = 1;
    b.metalHeat.forEach((other, j) => {
      if (j !== i) lagrange *= (frequency - other.frequency) / (at - other.frequency);
    });
    let sum = 0;
    for (let p = 0; p < n; p++)
      for (let q = 0; q < n; q++) {
        // conj(w_p) w_q
        const re = weights[2 * p]! * weights[2 * q]! + weights[2 * p + 1]! * weights[2 * q + 1]!;
        const im = weights[2 * p]! * weights[2 * q + 1]! - weights[2 * p + 1]! * weights[2 * q]!;
        sum += re * form[2 * (p * n + q)]! - im * form[2 * (p * n + q) + 1]!;
      }
    power += lagrange * sum;
  });
  b.loadCurrents.forEach((currents, i) => {
    let re = 0;
    let im = 0;
    for (let j = 0; j < n; j++) {
      re += weights[2 * j]! * currents[2 * j]! - weights[2 * j + 1]! * currents[2 * j + 1]!;
      im += weights[2 * j]! * currents[2 * j + 1]! + weights[2 * j + 1]! * currents[2 * j]!;
    }
    power += loadImpedance(b.discretised.structure.loads[b.discretised.loads[i]!.index]!, frequency).re * (re * re + im * im);
  });
  return power;
}
