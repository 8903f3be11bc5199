import { C, type Complex } from '../numeric/index.ts';
import type { Modulation } from '../place/index.ts';
import type { DetectorDrive } from './harmonic-balance.ts';
import type { OperatingPoint } from './operating-point.ts';
import { type RadioSource, Window } from './rf-half.ts';

/** Highest audio frequency that an AM carrier's window must hold [Hz]. */
const AM_WINDOW = 10_000;

/** A station's carrier at the detector's port, at rest and in motion. */
export interface Modulated {
  /** open-circuit amplitude at rest [V peak] and source impedance [ohm] */
  readonly amplitude: number;
  readonly zRe: number;
  readonly zIm: number;
  /** what drives the detector through one period of a tone [Hz] of the given swing */
  toneDrive(samples: number, tone: number, swing: number): DetectorDrive;
  /** change of detector current for a small change of the modulating quantity, output held at `output` [A/Hz or A] */
  sensitivity(point: OperatingPoint, output: number): number;
  /**
   * How far a small change of the modulating quantity pulls |A + Z F| and D apart, amplitude A and fundamental F held [V/Hz or V]:
   * what every balance of this carrier with a detector is moved by.
   */
  misfitSlope(amplitude: number, fundamental: number): number;
  /** what is left of a small modulation at an audio frequency [1], sidebands cut by the tank */
  sideband(frequency: number): number;
}

/**
 * @param emf - [V rms]
 * @param damping - for AM, how the detector at rest damps the tank, current at the carrier over amplitude; given the source at rest [S]
 */
export function modulated(
  rf: RadioSource,
  f0: number,
  emf: number,
  modulation: Modulation,
  damping: (amplitude: number, zRe: number, zIm: number) => number = () => 0,
): Modulated {
  return modulation.kind === 'fm' ? fm(rf, f0, emf, modulation.deviation) : am(rf, f0, emf, damping);
}

/**
 * Frequency modulation on the slope of the tank: the amplitude follows the frequency at every instant (quasi-static).
 *
 * Holds for audio frequencies well below the tank's half bandwidth; at 100 MHz and Q = 200 that is 250 kHz.
 */
function fm(rf: RadioSource, f0: number, emf: number, deviation: number): Modulated {
  const window = new Window(rf, f0, deviation);
  const peak = emf * Math.SQRT2;
  const amplitudeAt = (x: number): number => {
    window.read(x);
    return peak * Math.hypot(window.vRe, window.vIm);
  };
  const amplitude = amplitudeAt(0);
  const { zRe, zIm } = window;
  return {
    amplitude,
    zRe,
    zIm,
    toneDrive(samples, _tone, swing) {
      const drive = emptyDrive(samples);
      for (let k = 0; k < samples; k++) {
        const mirror = samples - k;
        if (k > mirror) {
          drive.amplitude[k] = drive.amplitude[mirror]!;
          drive.zRe[k] = drive.zRe[mirror]!;
          drive.zIm[k] = drive.zIm[mirror]!;
        } else {
          drive.amplitude[k] = amplitudeAt((swing / deviation) * Math.cos((2 * Math.PI * k) / samples));
          drive.zRe[k] = window.zRe;
          drive.zIm[k] = window.zIm;
        }
      }
      return drive;
    },
    misfitSlope(a, current) {
      const x = 0.1;
      const misfit = (at: number): number => {
        const drive = amplitudeAt(at);
        return Math.hypot(a + window.zRe * current, window.zIm * current) - drive;
      };
      return (misfit(x) - misfit(-x)) / (2 * x * deviation);
    },
    sensitivity(point, output) {
      // a tenth of the swing: small enough to be the slope, large enough that rounding does not show
      const x = 0.1;
      const currentAt = (at: number): number => {
        const a = amplitudeAt(at);
        point.solve(a, window.zRe, window.zIm, output, a);
        return point.current;
      };
      return (currentAt(x) - currentAt(-x)) / (2 * x * deviation);
    },
    sideband: () => 1,
  };
}

/**
 * Amplitude modulation: carrier and two sidebands through the tank, and the detector on their envelope.
 *
 * The tank that cuts the sidebands is the one the detector damps: each is V/(1 + Z g), g the conductance I1/A at rest, against the carrier's. That is
 * exact in square law, where g does not move, and in linear law where the output follows the envelope, where I1 and A keep their ratio.
 */
function am(rf: RadioSource, f0: number, emf: number, damping: (amplitude: number, zRe: number, zIm: number) => number): Modulated {
  const window = new Window(rf, f0, AM_WINDOW);
  const peak = emf * Math.SQRT2;
  window.read(0);
  const { vRe, vIm, zRe, zIm } = window;
  const v2 = vRe * vRe + vIm * vIm;
  const amplitude = peak * Math.sqrt(v2);
  const g = damping(amplitude, zRe, zIm);
  /** voltage for one volt of e.m.f. where the last reading was taken, the detector's conductance across it */
  const damped = (): Complex => C.div({ re: window.vRe, im: window.vIm }, { re: 1 + window.zRe * g, im: window.zIm * g });
  const carrier = damped();
  /** upper and lower sideband over the carrier, as [re, im, re, im] */
  const sidebands = (tone: number): [number, number, number, number] => {
    const ratio = (x: number): [number, number] => {
      window.read(x);
      const { re, im } = C.div(damped(), carrier);
      return [re, im];
    };
    const x = Math.min(tone / AM_WINDOW, 1);
    return [...ratio(x), ...ratio(-x)];
  };
  return {
    amplitude,
    zRe,
    zIm,
    toneDrive(samples, tone, swing) {
      const [ur, ui, lr, li] = sidebands(tone);
      const drive = emptyDrive(samples);
      for (let k = 0; k < samples; k++) {
        const c = Math.cos((2 * Math.PI * k) / samples);
        const s = Math.sin((2 * Math.PI * k) / samples);
        const re = 1 + (swing / 2) * (ur * c - ui * s + lr * c + li * s);
        const im = (swing / 2) * (ur * s + ui * c + li * c - lr * s);
        drive.amplitude[k] = amplitude * Math.hypot(re, im);
        drive.zRe[k] = zRe;
        drive.zIm[k] = zIm;
      }
      return drive;
    },
    misfitSlope: () => -amplitude,
    sensitivity(point, output) {
      point.solve(amplitude, zRe, zIm, output, amplitude);
      return point.byDrive * amplitude;
    },
    sideband(frequency) {
      const [ur, ui, lr, li] = sidebands(frequency);
      return Math.hypot((ur + lr) / 2, (ui - li) / 2);
    },
  };
}

function emptyDrive(samples: number): DetectorDrive {
  return { amplitude: new Float64Array(samples), zRe: new Float64Array(samples), zIm: new Float64Array(samples) };
}
