import type { WireLook } from '../circuit/sheet.ts';

/**
 * What a wire carries, the one that must be shortest first: the tank's circulating current; what the detector works with; what comes from the
 * aerial; speech and direct current.
 */
export const LEADS = ['tank', 'detector', 'aerial', 'audio'] as const;
export type Lead = (typeof LEADS)[number];

/** What a millimetre of each counts against the others: common practice, no source. */
export const WEIGHT: Readonly<Record<Lead, number>> = { tank: 10, detector: 4, aerial: 2, audio: 1 };

/** How a wire is drawn, by what it carries. */
export const LOOKS: Readonly<Record<Lead, WireLook>> = {
  tank: { stroke: 'accent', width: 1.1 },
  detector: { stroke: 'ink', width: 0.75 },
  aerial: { stroke: 'ink', width: 0.75 },
  audio: { stroke: 'ink', width: 0.35 },
};
