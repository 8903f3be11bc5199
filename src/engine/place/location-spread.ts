import type { UsedMethod } from './description.ts';

/** How much the field varies from place to place, and why that much. */
export interface LocationSpread {
  /** standard deviation [dB] */
  readonly decibels: number;
  readonly formula: string;
  readonly source: string;
}

/** One strong reflection of unknown phase: the mean level is that without it, the standard deviation 8.686 sqrt(Li2(rho^2)/2), 5.5 dB for rho = 0.8. */
const ONE_REFLECTION = 5.5;
/** The same for rho = 0.47: what walls and ground return where the mast itself is next door. */
const CLOSE_BY = 3;
/** Reading error of a field meter in a hand. */
const METER = 2;
/** Medium wave bends around houses; wiring and steel frames still draw or shade it. */
const GROUND_WAVE = 3;

/**
 * Location variability of analogue broadcasting: sigma = 5.1 + 1.6 log10 f, f in MHz.
 *
 * Source: ITU-R P.1546-3 Annex 5 section 12 (8.3 dB at 100 MHz).
 */
export function locationVariability(frequency: number): number {
  return 5.1 + 1.6 * Math.log10(frequency / 1e6);
}

/**
 * Spread of the field around its median by the method that found it.
 *
 * @param nearness - 1 from 1 km on, 0 next to the mast: how much of the curves' loss applies
 */
export function locationSpread(method: UsedMethod, frequency: number, nearness: number): LocationSpread {
  switch (method) {
    case 'measured':
      return { decibels: METER, formula: 'sigma_L = 2', source: 'estimate: reading error of a hand-held field meter' };
    case 'free-space':
      return {
        decibels: ONE_REFLECTION,
        formula: '8.686 sqrt(Li2(rho^2)/2), rho = 0.8',
        source: 'estimate: one reflection of 0.8 and unknown phase, which free space leaves out',
      };
    case 'ground-wave':
      return { decibels: GROUND_WAVE, formula: 'sigma_L = 3', source: 'estimate: local wiring and steelwork' };
    case 'broadcast-curves':
    case 'smooth-earth':
    case 'terrain': {
      const full = locationVariability(frequency);
      return {
        decibels: CLOSE_BY + (full - CLOSE_BY) * nearness,
        formula: nearness === 1 ? 'sigma_L = 5.1 + 1.6 log10 f' : '3 + (5.1 + 1.6 log10 f - 3) w',
        source: 'ITU-R P.1546-3 Annex 5 sec. 12, analogue broadcasting; nearer than 1 km drawn in to 3 dB (estimate)',
      };
    }
  }
}
