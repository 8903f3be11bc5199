import { ETA0 } from '../constants.ts';
import type { ReceivedField } from '../place/index.ts';

/** Below this a wave is longer than what could scatter it [Hz]. */
const VHF = 30e6;
/** How far what ground, houses and trees scatter into the other polarisation stands below the wave itself, at VHF [dB]. */
const CROSSED_OUTDOORS = 18;
/** The same between walls [dB]: an estimate. */
const CROSSED_INDOORS = 10;

/**
 * E.m.f. of the waves that come from elsewhere than the mast, by which an aerial in a null, or across the polarisation, still hears something.
 *
 * They are taken to come from all round in both polarisations alike. Of such waves any aerial, whatever its shape, gathers lambda^2/(8 pi), less
 * its losses: V^2 = E^2 10^(-X/10) lambda^2 R_r / (pi eta).
 *
 * @param radiationResistance - R_r [ohm]
 * @returns [V rms]; none where the method knows an empty world, and none on medium wave, where nothing is large enough to scatter
 * Holds for: an estimate, with a spread of some dB from place to place.
 * Source: mean effective area, R. E. Collin & F. J. Zucker, Antenna Theory (1969) ch. 4; X of 18 dB at the low end of VHF, Rec. ITU-R P.1406 (from memory).
 */
export function scatteredEmf(received: ReceivedField, indoors: boolean, wavelength: number, radiationResistance: number): number {
  if (received.station.frequency < VHF) return 0;
  if (received.method === 'free-space' || received.method === 'smooth-earth') return 0;
  const crossed = 10 ** (-(indoors ? CROSSED_INDOORS : CROSSED_OUTDOORS) / 20);
  return received.field * crossed * wavelength * Math.sqrt(radiationResistance / (Math.PI * ETA0));
}
