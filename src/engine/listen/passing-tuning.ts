import { layout, type RadioTuning } from './radio-tuning.ts';

/**
 * The modes of one tuning in the order of another, each beside the one whose decay is nearest; null where their numbers differ, so that neither can pass
 * into the other.
 */
export function inOrderOf(from: RadioTuning, to: RadioTuning): RadioTuning | null {
  if (from.modes !== to.modes) return null;
  const { stride } = layout(to.modes, to.ports, to.taps);
  const numbers = to.numbers.slice();
  const free = Array.from({ length: to.modes }, (_, k) => k);
  for (let k = 0; k < from.modes; k++) {
    const distance = (m: number): number =>
      Math.hypot(to.numbers[m * stride]! - from.numbers[k * stride]!, to.numbers[m * stride + 1]! - from.numbers[k * stride + 1]!);
    const nearest = free.reduce((best, m) => (distance(m) < distance(best) ? m : best));
    free.splice(free.indexOf(nearest), 1);
    numbers.set(to.numbers.subarray(nearest * stride, (nearest + 1) * stride), k * stride);
  }
  return { ...to, numbers };
}

/** Part of the way from one tuning to another whose modes stand in the same order. */
export function between(from: RadioTuning, to: RadioTuning, share: number): RadioTuning {
  return {
    ...to,
    numbers: from.numbers.map((x, k) => x + share * (to.numbers[k]! - x)),
    conductances: from.conductances.map((g, k) => g + share * (to.conductances[k]! - g)),
  };
}
