import { fastExp, fastExpm1, modifiedBesselScaled, modifiedBesselSmall } from '../numeric/index.ts';
import {
  type DescribingFunction,
  FUNDAMENTAL,
  FUNDAMENTAL_BY_AMPLITUDE,
  FUNDAMENTAL_BY_OUTPUT,
  MEAN,
  MEAN_BY_AMPLITUDE,
  MEAN_BY_OUTPUT,
} from './model.ts';

/** Above exp(200) (1e87 A at least) the exponential goes on along its tangent, so that a solver far from home meets finite numbers. */
const EXPONENT_END = 200;
const END_VALUE = Math.exp(EXPONENT_END);

/**
 * Exponential junction without series resistance under a sinusoid, exactly.
 *
 * With x = A/(n Vt), u = V/(n Vt): mean Is (exp(-u) I0(x) - 1), in-phase fundamental 2 Is exp(-u) I1(x) [A peak]; derivatives by
 * I0' = I1, I1' = (I0 + I2)/2. Below x = 1 the mean is Is (exp(-u) (I0 - 1) + (exp(-u) - 1)), which keeps its figures down to nothing.
 *
 * Holds for: a voltage that is a sinusoid, as a tank of high Q forces; junction capacitance stands beside it as a linear element.
 * Source: K. K. Clarke, D. T. Hess, Communication Circuits (1971), ch. 4; H. C. Torrey, C. A. Whitmer, Crystal Rectifiers (1948);
 * Abramowitz & Stegun 9.6.34 (generating function).
 */
export class JunctionLaw implements DescribingFunction {
  readonly #saturation: number;
  readonly #slope: number;
  readonly #bessel = new Float64Array(3);

  /**
   * @param saturation - Is [A]
   * @param slope - n Vt [V]
   */
  constructor(saturation: number, slope: number) {
    this.#saturation = saturation;
    this.#slope = slope;
  }

  at(amplitude: number, outputVoltage: number, out: Float64Array): void {
    const bessel = this.#bessel;
    const x = amplitude / this.#slope;
    const u = outputVoltage / this.#slope;
    const conductance = this.#saturation / this.#slope;
    const small = x < 1;
    // exp(z) multiplies the unscaled functions at small x, the scaled ones elsewhere
    const z = small ? -u : x - u;
    let e: number;
    let tangent: number;
    if (z > EXPONENT_END) {
      tangent = END_VALUE;
      e = END_VALUE * (1 + z - EXPONENT_END);
    } else {
      e = fastExp(z);
      tangent = e;
    }
    let i0: number;
    if (small) {
      modifiedBesselSmall(x, bessel);
      i0 = bessel[0]! + 1;
      out[MEAN] = this.#saturation * (e * bessel[0]! + (z > EXPONENT_END ? e - 1 : fastExpm1(z)));
    } else {
      modifiedBesselScaled(x, bessel);
      i0 = bessel[0]!;
      out[MEAN] = this.#saturation * (e * i0 - 1);
    }
    const i1 = bessel[1]!;
    const i2 = bessel[2]!;
    // on the tangent d/dx of e(x - u) f(x) exp(-x) is e' f + e (f' - f): written so that both cases agree
    const stretch = small ? 0 : tangent - e;
    out[FUNDAMENTAL] = 2 * this.#saturation * e * i1;
    out[MEAN_BY_AMPLITUDE] = conductance * (e * i1 + stretch * i0);
    out[MEAN_BY_OUTPUT] = -conductance * tangent * i0;
    out[FUNDAMENTAL_BY_AMPLITUDE] = conductance * (e * (i0 + i2) + 2 * stretch * i1);
    out[FUNDAMENTAL_BY_OUTPUT] = -2 * conductance * tangent * i1;
  }

  current(voltage: number): number {
    return this.#saturation * Math.expm1(Math.min(voltage / this.#slope, EXPONENT_END));
  }
}
