import { modifiedBesselScaled } from './bessel-modified.ts';

/** Impulse response of a filter in continuous time: zero outside (-before, after) [s]. */
export interface Kernel {
  readonly before: number;
  readonly after: number;
  /** response at a time [1/s] */
  at(time: number): number;
}

/** A low-pass with its slope in time, from which filters with a zero are made. */
export interface LowPassKernel extends Kernel {
  /** derivative of the response at a time [1/s^2] */
  slope(time: number): number;
}

/**
 * Linear-phase low-pass: the ideal one cut short by Kaiser's window.
 *
 * h(t) = 2 fc sinc(2 fc t) I0(b sqrt(1 - (t/T)^2))/I0(b), fc = (pass + stop)/2, 2 T = (A - 7.95)/(14.36 (stop - pass)), b = 0.1102 (A - 8.7).
 *
 * @param pass, stop - edges [Hz]
 * @param attenuation - A, of the stop band [dB], 50 or more, met within 2 dB; the pass band ripples by 10^(-A/20)
 * Source: J. F. Kaiser, Proc. IEEE Int. Symp. Circuits and Systems 1974, 20; A. V. Oppenheim, R. W. Schafer, Discrete-Time Signal
 * Processing, 3rd ed. (2010), sec. 7.5.
 */
export function lowPassKernel(pass: number, stop: number, attenuation: number): LowPassKernel {
  const beta = 0.1102 * (attenuation - 8.7);
  const half = (attenuation - 7.95) / (14.36 * (stop - pass)) / 2;
  const w = Math.PI * (pass + stop);
  const bessel = new Float64Array(3);
  modifiedBesselScaled(beta, bessel);
  const atCentre = bessel[0]!;
  return {
    before: half,
    after: half,
    at(t) {
      if (Math.abs(t) > half) return 0;
      const s = Math.sqrt(1 - (t / half) ** 2);
      modifiedBesselScaled(beta * s, bessel);
      const window = (bessel[0]! * Math.exp(beta * (s - 1))) / atCentre;
      return t === 0 ? w / Math.PI : (Math.sin(w * t) / (Math.PI * t)) * window;
    },
    slope(t) {
      if (Math.abs(t) >= half || t === 0) return 0;
      const s = Math.sqrt(1 - (t / half) ** 2);
      modifiedBesselScaled(beta * s, bessel);
      const scale = Math.exp(beta * (s - 1)) / atCentre;
      // the window's own slope is -b t/(T^2 s) I1(b s)/I0(b)
      const windowSlope = (-beta * t * bessel[1]! * scale) / (half * half * s);
      const sine = Math.sin(w * t) / (Math.PI * t);
      return ((w * Math.cos(w * t)) / (Math.PI * t) - sine / t) * bessel[0]! * scale + sine * windowSlope;
    },
  };
}
