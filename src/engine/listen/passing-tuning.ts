import { C } from '../numeric/index.ts';
import { layout, type RadioTuning } from './radio-tuning.ts';

/**
 * The modes of one tuning in the order of another, each beside the one whose pole is nearest; null where their numbers differ, so that neither can pass
 * into the other.
 */
export function inOrderOf(from: RadioTuning, to: RadioTuning): RadioTuning | null {
  if (from.modes !== to.modes) return null;
  const { stride } = layout(to.modes, to.ports, to.taps);
  const numbers = to.numbers.slice();
  const free = to.poles.map((_, k) => k);
  const poles = from.poles.map((pole, k) => {
    const distance = (m: number): number => C.abs(C.sub(to.poles[m]!, pole));
    const nearest = free.reduce((best, m) => (distance(m) < distance(best) ? m : best));
    free.splice(free.indexOf(nearest), 1);
    numbers.set(to.numbers.subarray(nearest * stride, (nearest + 1) * stride), k * stride);
    return to.poles[nearest]!;
  });
  return { ...to, numbers, poles };
}

/** Part of the way from one tuning to another whose modes stand in the same order. */
export function between(from: RadioTuning, to: RadioTuning, share: number): RadioTuning {
  return {
    ...to,
    numbers: from.numbers.map((x, k) => x + share * (to.numbers[k]! - x)),
    conductances: from.conductances.map((g, k) => g + share * (to.conductances[k]! - g)),
    gains: from.gains.map((g, k) => g + share * (to.gains[k]! - g)),
  };
}
