import type { EarInTime } from './ear-in-time.ts';

const CHUNK = 1024;

/**
 * Brings an earpiece to rest on the steady voltage that a set has across it before the programme begins.
 *
 * A set in time begins with its bias settled; an earpiece that had no voltage till then would click.
 *
 * @param volts - of the set's first sample [V]
 */
export function settleEar(ear: EarInTime, volts: number): void {
  const steady = new Float64Array(CHUNK).fill(volts);
  const unheard = new Float64Array(CHUNK);
  for (let n = 0; n < ear.filterLength; n += CHUNK) ear.process(steady, unheard);
}
