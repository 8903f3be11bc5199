import type { KnownDocument } from '#jobs';
import address from '../../examples/dipole-and-small-coil.json?ahead';

/** The set that is open when there is nothing to go on with. */
export const FIRST = 'dipole-and-small-coil.json';

/** The first set as the build has read it; null where it is to be read here. */
export async function firstSet(): Promise<KnownDocument | null> {
  if (address === null) return null;
  try {
    const answer = await fetch(address);
    return answer.ok ? ((await answer.json()) as KnownDocument) : null;
  } catch {
    return null;
  }
}
