import { dialAt, type Reception } from '#engine';

/** Frequencies that the dial must reach from end to end [Hz]. */
export interface WantedBand {
  readonly from: number;
  readonly to: number;
}

/** Where the dial stands for one end of the wanted band: a share of its rotation, or the capacitance that it lacks there [F], above zero at its maximum, below zero at its minimum. */
export type BandEnd = { readonly frequency: number } & ({ readonly place: number } | { readonly missing: number });

/** Both ends of a band on the dial of a set, aerial and detector joined; null where none is wanted. */
export function bandEnds(band: WantedBand | null, { receiver, signals }: Reception): readonly BandEnd[] | null {
  const arrival = signals[0]?.arrival;
  if (!band || !arrival) return null;
  return [band.from, band.to].map((frequency) => {
    const at = dialAt(receiver, arrival, frequency);
    return 'missing' in at ? { frequency, missing: at.missing } : { frequency, place: at.angle / receiver.tank.rotation };
  });
}
