import { assemble, standAt } from '#engine';
import { glance } from '../glance.ts';
import { heardBest } from '../search/front.ts';
import type { Meant } from './built.ts';

/** Index of the station that a set as meant hears best, at a place that has some. */
export function bestStation({ place, set, listener }: Omit<Meant, 'station'>): number {
  const reception = standAt(place, assemble(set, listener));
  return heardBest(reception.signals.map((_, k) => glance(reception, k))).station;
}
