import { EARTH, Network, powers } from '../circuit/index.ts';
import { BANDS } from '../ear/index.ts';
import { C, type Complex } from '../numeric/index.ts';
import type { PhonesModel } from '../phones/index.ts';

/** The audio half at one frequency, driven at the detector's output. */
export interface AudioPoint {
  readonly frequency: number;
  /** impedance the detector's current sees, resistance of the tank's direct-current path included [ohm] */
  readonly load: Complex;
  /** earpiece voltage for one ampere of detector current [ohm] */
  readonly transfer: Complex;
  /** sound level on the earpiece's coupler for one volt rms across it [dB SPL] */
  readonly sensitivity: number;
  /** power into the earpiece for one ampere rms of detector current [W/A^2] */
  readonly power: number;
}

/** The audio half of a set, solved once for all frequencies that levels need: 0, the tone and its harmonics, and the bands of speech. */
export interface AudioHalf {
  readonly tone: number;
  /** by harmonic of the tone, 0 first */
  readonly harmonics: readonly AudioPoint[];
  /** by band of BANDS */
  readonly bands: readonly AudioPoint[];
  /** by band: room noise taken off by the earpiece [dB], and threshold of a normal ear under it [dB SPL] */
  readonly attenuation: Float64Array;
  readonly threshold: Float64Array;
}

/** Resistance that stands for "no path at all", so that a network without a direct-current path still has a solution [ohm]. */
const OPEN = 1e12;

export function audioHalf(phones: PhonesModel, directResistance: number, tone: number, harmonics: number): AudioHalf {
  const network = new Network([
    ...phones.elements,
    { kind: 'resistor', name: 'open', a: 'output', b: EARTH, resistance: OPEN },
    { kind: 'resistor', name: 'open earpiece', a: 'earpiece', b: EARTH, resistance: OPEN },
    { kind: 'current', name: 'detector', a: 'output', b: EARTH, re: 1, im: 0 },
  ]);
  const at = (frequency: number): AudioPoint => {
    const s = network.solveAt(frequency);
    if (!s) throw new Error(`the audio network has no solution at ${frequency} Hz`);
    const power = powers(network, s, frequency).reduce((sum, e) => (e.name.startsWith('earpiece') ? sum + e.watts : sum), 0);
    return {
      frequency,
      load: C.add(s.voltage('output'), { re: directResistance, im: 0 }),
      transfer: s.voltage('earpiece'),
      sensitivity: phones.sensitivity(frequency),
      power,
    };
  };
  return {
    tone,
    harmonics: Array.from({ length: harmonics + 1 }, (_, k) => at(k * tone)),
    bands: BANDS.map(at),
    attenuation: Float64Array.from(BANDS, (f) => phones.attenuation(f)),
    threshold: Float64Array.from(BANDS, (f) => phones.threshold(f)),
  };
}
