import type { Modulation } from '../place/index.ts';
import type { DetectorDrive } from './harmonic-balance.ts';
import type { OperatingPoint } from './operating-point.ts';
import { type RfHalf, Window } from './rf-half.ts';

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
  /** relative change of the open-circuit amplitude for a small change of the modulating quantity [1/Hz or 1] */
  relativeSlope(): number;
  /** what is left of a small modulation at an audio frequency [1], sidebands cut by the tank */
  sideband(frequency: number): number;
}

/** @param emf - [V rms] */
export function modulated(rf: RfHalf, f0: number, emf: number, modulation: Modulation): Modulated {
  return modulation.kind === 'fm' ? fm(rf, f0, emf, modulation.deviation) : am(rf, f0, emf);
}

/**
 * Frequency modulation on the slope of the tank: the amplitude follows the frequency at every instant (quasi-static).
 *
 * Holds for audio frequencies well below the tank's half bandwidth; at 100 MHz and Q = 200 that is 250 kHz.
 */
function fm(rf: RfHalf, f0: number, emf: number, deviation: number): Modulated {
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
    relativeSlope() {
      const x = 0.1;
      return (amplitudeAt(x) - amplitudeAt(-x)) / (2 * x * deviation * amplitude || 1);
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

/** Amplitude modulation: carrier and two sidebands through the tank, and the detector on their envelope. */
function am(rf: RfHalf, f0: number, emf: number): Modulated {
  const window = new Window(rf, f0, AM_WINDOW);
  const peak = emf * Math.SQRT2;
  window.read(0);
  const { vRe, vIm, zRe, zIm } = window;
  const v2 = vRe * vRe + vIm * vIm;
  /** upper and lower sideband over the carrier, as [re, im, re, im] */
  const sidebands = (tone: number): [number, number, number, number] => {
    const ratio = (x: number): [number, number] => {
      window.read(x);
      return [(window.vRe * vRe + window.vIm * vIm) / v2, (window.vIm * vRe - window.vRe * vIm) / v2];
    };
    const x = Math.min(tone / AM_WINDOW, 1);
    return [...ratio(x), ...ratio(-x)];
  };
  return {
    amplitude: peak * Math.sqrt(v2),
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
        drive.amplitude[k] = peak * Math.sqrt(v2) * Math.hypot(re, im);
        drive.zRe[k] = zRe;
        drive.zIm[k] = zIm;
      }
      return drive;
    },
    relativeSlope: () => 1,
    sensitivity(point, output) {
      point.solve(peak * Math.sqrt(v2), zRe, zIm, output, peak * Math.sqrt(v2));
      return point.byDrive * peak * Math.sqrt(v2);
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
