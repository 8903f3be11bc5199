import type { Built } from './built.ts';
import { offMeant } from './dial-spread.ts';

/** A set as it came out, as far as a picture shows it. */
export interface HandBuilt {
  /** where the dial stands for the station, as a share of its rotation; null where it is not reached */
  readonly place: number | null;
  /** by how much the set is off with the dial where it was meant to stand [Hz]; null for what cannot be built */
  readonly off: number | null;
  /** best band over what the ear needs [dB]; null for no sound at all */
  readonly headroom: number | null;
  readonly outcome: 'understood' | 'heard' | 'silent';
}

/** @param meant - the set without any error */
export const handBuilt = (meant: Built, built: Built): HandBuilt => ({
  place: built.place,
  off: offMeant(meant, built),
  headroom: built.headroom,
  outcome: built.understood ? 'understood' : built.heard ? 'heard' : 'silent',
});
