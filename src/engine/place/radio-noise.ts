import type { Site } from './description.ts';

type Surroundings = Site['radioNoise'];

/** Fa = c - d log10 f, f in MHz, with the deciles' distance above and below the median [dB]. */
interface NoiseLaw {
  readonly c: number;
  readonly d: number;
  readonly upperDecile: number;
  readonly lowerDecile: number;
}

/** Man-made noise. Source: ITU-R P.372-16 section 5, tables 1 and 2 (deciles of city, residential and rural areas; quiet rural taken as rural). */
const MAN_MADE: Readonly<Record<Surroundings, NoiseLaw>> = {
  city: { c: 76.8, d: 27.7, upperDecile: 11, lowerDecile: 6.7 },
  residential: { c: 72.5, d: 27.7, upperDecile: 10.6, lowerDecile: 5.3 },
  rural: { c: 67.2, d: 27.7, upperDecile: 9.2, lowerDecile: 4.6 },
  'quiet-rural': { c: 53.6, d: 28.6, upperDecile: 9.2, lowerDecile: 4.6 },
};
/** The galaxy, seen through the ionosphere. Source: ITU-R P.372-16 section 6 (deciles from memory). */
const GALACTIC: NoiseLaw = { c: 52, d: 23, upperDecile: 2, lowerDecile: 2 };
/** The ionosphere lets the galaxy through from about here [Hz] (foF2); below it the sky is shut. */
const GALAXY_FROM = 10e6;

const median = (law: NoiseLaw, frequency: number): number => law.c - law.d * Math.log10(frequency / 1e6);

/** Median noise figure of man-made noise [dB above k T0 b]. Source: ITU-R P.372-16 eq. 14; 0.3 to 250 MHz, quiet rural to 30 MHz. */
export const manMadeNoiseFigure = (surroundings: Surroundings, frequency: number): number => median(MAN_MADE[surroundings], frequency);

/** Median noise figure of the galaxy [dB above k T0 b]. Source: ITU-R P.372-16 section 6; above foF2, to 100 MHz and beyond. */
export const galacticNoiseFigure = (frequency: number): number => median(GALACTIC, frequency);

export interface ExternalNoise extends NoiseLaw {
  /** median Fa [dB above k T0 b] */
  readonly figure: number;
  readonly from: 'man-made' | 'galactic';
}

/** The stronger of man-made and galactic noise. */
export function externalNoise(surroundings: Surroundings, frequency: number): ExternalNoise {
  const manMade = manMadeNoiseFigure(surroundings, frequency);
  const galactic = frequency >= GALAXY_FROM ? galacticNoiseFigure(frequency) : Number.NEGATIVE_INFINITY;
  return manMade >= galactic
    ? { ...MAN_MADE[surroundings], figure: manMade, from: 'man-made' }
    : { ...GALACTIC, figure: galactic, from: 'galactic' };
}

/**
 * Field that gives a reference aerial as much power as the noise.
 *
 * E_n = Fa + 20 log10 f + 10 log10 b - 99.0 (half-wave dipole), -95.5 (short monopole on perfect ground), f in MHz, b in Hz
 *
 * @returns [dB re 1 uV/m rms]
 * Source: ITU-R P.372-16 eqs 7, 8.
 */
export function noiseField(figure: number, frequency: number, bandwidth: number, aerial: 'dipole' | 'monopole'): number {
  return figure + 20 * Math.log10(frequency / 1e6) + 10 * Math.log10(bandwidth) - (aerial === 'dipole' ? 99 : 95.5);
}
