import { assemble, standAt } from '#engine';
import { glance } from '../glance.ts';
import type { Meant } from './built.ts';

/** Index of the station that a set as meant hears best, at a place that has some. */
export function bestStation({ place, set, listener }: Omit<Meant, 'station'>): number {
  const reception = standAt(place, assemble(set, listener));
  return reception.signals.map((_, k) => glance(reception, k)).reduce((a, b) => (b.headroom > a.headroom ? b : a)).station;
}
