import { C, type Complex, faddeeva } from '../numeric/index.ts';

const ROOT_PI = Math.sqrt(Math.PI);
/** From this numerical distance on the asymptotic series is exact to 1e-12. */
const FAR = 60;
/** Up to this numerical distance the curvature terms are summed in powers, where their closed forms cancel. */
const NEAR = 0.5;

/**
 * Sommerfeld's attenuation of the ground wave over plane earth.
 *
 * F(p) = 1 - j sqrt(pi p) exp(-p) erfc(j sqrt p); far away F = -1/(2p) - 3/(4p^2) - ...
 *
 * @param p - numerical distance, exp(+j w t): -j (k d / 2) Delta^2
 * Source: K. A. Norton, Proc. IRE 29 (1941) 623, eqs 1-3.
 */
export function surfaceWave(p: Complex): Complex {
  if (C.abs(p) > FAR) {
    const inverse = C.inv(p);
    let term = C.scale(inverse, -0.5);
    let sum = term;
    for (let n = 1; n < 12; n++) {
      term = C.scale(C.mul(term, inverse), n + 0.5);
      sum = C.add(sum, term);
    }
    return sum;
  }
  const z = C.neg(C.sqrt(p));
  return C.add(C.ONE, C.scale(C.mul(C.mul(C.J, z), faddeeva(z)), ROOT_PI));
}

/**
 * The same over a gently curved earth: two further terms in the curvature.
 *
 * W = F + B1/(4 q^3) + B2/(4 q^6), u = -j sqrt p,
 * B1 = 1 + sqrt(pi) u - (1 - 2 u^2) F, B2 = 1 + sqrt(pi) u (1 + u^2) + 2 u^2 + (5/6) u^4 + (u^4/2 - 1) F.
 * F in powers of u has the coefficients sqrt(pi)/Gamma((n+1)/2), so the brackets begin with u^3 and u^6.
 *
 * @param q - (k a / 2)^(1/3) Delta, turned by -j: the ground's impedance in Fock's units, exp(+j w t)
 * Holds for: normalised distances up to 0.3 (about 55 km at 1 MHz), where it is within 0.01 dB of the residue series.
 * Source: J. R. Wait, J. Res. NBS 56 (1956) 237; D. A. Hill & J. R. Wait, Radio Science 15 (1980) 637.
 */
export function curvedSurfaceWave(p: Complex, q: Complex): Complex {
  const f = surfaceWave(p);
  const u = C.mul({ re: 0, im: -1 }, C.sqrt(p));
  if (C.abs(p) < NEAR) return C.add(f, nearCurvature(u, q));
  const u2 = C.mul(u, u);
  const u4 = C.mul(u2, u2);
  const rootPiU = C.scale(u, ROOT_PI);
  const first = C.sub(C.add(C.ONE, rootPiU), C.mul(C.sub(C.ONE, C.scale(u2, 2)), f));
  const polynomial = C.add(C.add(C.ONE, C.mul(rootPiU, C.add(C.ONE, u2))), C.add(C.scale(u2, 2), C.scale(u4, 5 / 6)));
  const second = C.add(polynomial, C.mul(C.sub(C.scale(u4, 0.5), C.ONE), f));
  const q3 = C.mul(q, C.mul(q, q));
  return C.add(f, C.add(C.div(first, C.scale(q3, 4)), C.div(second, C.scale(C.mul(q3, q3), 4))));
}

/** sqrt(pi)/Gamma((n+1)/2), n from 0. */
const POWERS = powers(40);

function powers(count: number): number[] {
  const f = [1, ROOT_PI];
  for (let n = 2; n < count; n++) f.push(f[n - 2]! / ((n - 1) / 2));
  return f;
}

/** B1/(4 q^3) + B2/(4 q^6) in powers of u; u/q is kept apart, so that nothing is divided by a vanishing q. */
function nearCurvature(u: Complex, q: Complex): Complex {
  const ratio = C.div(u, q);
  const ratio3 = C.mul(ratio, C.mul(ratio, ratio));
  let first: Complex = C.ZERO;
  let second: Complex = C.ZERO;
  for (let n = POWERS.length - 1; n >= 6; n--) second = C.add(C.mul(second, u), C.complex(POWERS[n - 4]! / 2 - POWERS[n]!));
  for (let n = POWERS.length - 1; n >= 3; n--) first = C.add(C.mul(first, u), C.complex(2 * POWERS[n - 2]! - POWERS[n]!));
  return C.scale(C.mul(ratio3, C.add(first, C.mul(ratio3, second))), 0.25);
}
