import type { Looks } from './PathWide.tsx';
import type { AerialLook } from './pictograms.ts';

type Json = Record<string, unknown>;

const AERIAL_LOOKS: Readonly<Record<string, AerialLook>> = {
  dipole: 'dipole',
  'folded-dipole': 'dipole',
  beam: 'beam',
  loop: 'loop',
  'round-loop': 'loop',
  'square-loop': 'loop',
  coil: 'loop',
  'wire-to-earth': 'earth-wire',
};

/**
 * How the set of a document looks from afar; a document at fault looks like a rod, a coil of five turns and a junction.
 *
 * @param turns - of the coil; null where they are not known
 */
export function looksOf(document: unknown, turns: number | null): Looks {
  const aerial = objectAt(document, 'aerial');
  const word = String(aerial.kind === 'wires' ? aerial.shape : aerial.kind);
  const detector = objectAt(document, 'detector');
  const channel = detector.kind === 'channel' || /fet/.test(String(detector.part ?? ''));
  return {
    aerial: AERIAL_LOOKS[word] ?? 'rod',
    turns: turns ?? 5,
    detector: channel ? 'channel' : 'junction',
  };
}

function objectAt(owner: unknown, key: string): Json {
  const value = typeof owner === 'object' && owner !== null ? (owner as Json)[key] : null;
  return typeof value === 'object' && value !== null ? (value as Json) : {};
}
