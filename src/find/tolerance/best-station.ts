import { assemble, standAt } from '#engine';
import { glance } from '../glance.ts';
import type { Meant } from './built.ts';

/**
 * The station that a set as meant hears best.
 *
 * @returns its index; null at a place without stations
 */
export function bestStation({ place, set, listener }: Omit<Meant, 'station'>): number | null {
  const reception = standAt(place, assemble(set, listener));
  const looks = reception.signals.map((_, k) => glance(reception, k));
  return looks.length === 0 ? null : looks.reduce((a, b) => (b.headroom > a.headroom ? b : a)).station;
}
