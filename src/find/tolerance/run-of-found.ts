import type { Found } from '../search/answer.ts';
import { heardBest } from '../search/front.ts';
import { usedParts } from '../search/named.ts';
import type { Space } from '../search/space.ts';
import { ToleranceRun } from './tolerance.ts';

/** A set that was found, to be built on paper over and over of the parts of its drawer, judged by the station it hears best. */
export function runOfFound(space: Space, { design, set, looks }: Found): ToleranceRun {
  const { place, listener } = space;
  return new ToleranceRun({ place, set, listener, station: heardBest(looks).station }, { parts: usedParts(space, design) });
}
