import type { Change, Situation } from './situation.ts';

/** Steps in which small fixed capacitors are sold [F]. */
const STEP = 1e-12;
/** More than is missing, so that the station does not lie at the very end of the dial. */
const MORE = 1.1;

/**
 * What brings a station onto the dial.
 *
 * @param missing - capacitance by which the dial misses [F]; null where it reaches
 */
export function reachChanges(s: Situation, missing: number | null): Change[] {
  if (missing === null || missing <= 0) return [];
  const { tank } = s.set;
  const added = Math.ceil((MORE * missing) / STEP) * STEP;
  const capacitor = { ...tank.capacitor, parallel: (tank.capacitor.parallel ?? 0) + added };
  return [
    {
      key: 'tank.parallel',
      words: `put ${(added * 1e12).toFixed(0)} pF across the tuning capacitor`,
      situation: { ...s, set: { ...s.set, tank: { ...tank, capacitor } } },
    },
  ];
}
