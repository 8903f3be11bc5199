import { linear } from '../numeric/index.ts';
import type { EarCoupling } from './description.ts';

const OCTAVES = Float64Array.of(125, 250, 500, 1000, 2000, 4000, 8000).map(Math.log);

/** Mean attenuation of outside sound [dB], measured: service manual of an audiometer, p. 14. Person to person about 5 dB. */
const SUPRA_AURAL = [3, 5, 7, 15, 26, 32, 24];
const INSERT = [33.5, 34.5, 34.5, 35.0, 33.0, 39.5, 43.5];
/** A circumaural set built into an ear defender, same source. */
const EAR_DEFENDER = [14.5, 16, 22.5, 28.5, 32, 45.5, 44];

/** Ordinary circumaural cushions press less and leak more than an ear defender [dB]. Estimate. */
export const ORDINARY_CUSHION = 10;
/** A hard plastic plug with no soft tip keeps out about half as many dB as a sealing insert. Estimate. */
const HARD_PLUG = 0.5;

const ATTENUATION: Readonly<Record<EarCoupling, { readonly level: readonly number[]; readonly source: string }>> = {
  'supra-aural': { level: SUPRA_AURAL, source: 'measured on audiometric supra-aural cushions (audiometer service manual, p. 14)' },
  insert: { level: INSERT, source: 'measured on audiometric insert earphones (audiometer service manual, p. 14)' },
  circumaural: {
    level: EAR_DEFENDER.map((a) => a - ORDINARY_CUSHION),
    source: `estimate: ${ORDINARY_CUSHION} dB less than measured on circumaural phones in an ear defender`,
  },
  plug: {
    level: INSERT.map((a) => a * HARD_PLUG),
    source: 'estimate: half the decibels of a sealing insert, for a hard plug without a soft tip',
  },
  open: { level: INSERT.map(() => 0), source: 'nothing closes the ear' },
};

/** Attenuation of outside sound by what stands on or in the ear [dB, positive]; straight lines against log f, ends held outside 125 Hz to 8 kHz. */
export function couplingAttenuation(coupling: EarCoupling, frequency: number): number {
  return linear(OCTAVES, ATTENUATION[coupling].level, Math.log(frequency));
}

export const couplingAttenuationSource = (coupling: EarCoupling): string => ATTENUATION[coupling].source;

/** Corner below which an earpiece that does not seal loses its bass [Hz]. Estimates: hard plug, transducer held near the ear. */
const LEAK_CORNER: Readonly<Record<EarCoupling, number>> = { insert: 0, 'supra-aural': 0, circumaural: 0, plug: 400, open: 800 };

/**
 * Sound lost through the gap between earpiece and ear, which the sealed coupler does not show [dB, positive].
 *
 * The air in the gap is a mass, the ear's volume a spring: below their resonance the pressure falls by 12 dB per octave,
 * 10 log10(1 + (fc/f)^4). Nothing for a sealed insert or a cushion: their reference thresholds were found with the leaks of real ears.
 * The corners are estimates (400 Hz hard plug, 800 Hz open); a firm hand on the earpiece lowers them.
 */
export function leakLoss(coupling: EarCoupling, frequency: number): number {
  const corner = LEAK_CORNER[coupling];
  return corner === 0 ? 0 : 10 * Math.log10(1 + (corner / frequency) ** 4);
}
