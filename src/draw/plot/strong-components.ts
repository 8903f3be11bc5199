import type { PatternPoint } from '#engine';
import type { Component } from './draw-pattern.ts';

/** A component that stays so far below the other is not worth a curve [dB]. */
const FAINT = 30;

/** Which curves of a pattern say something: the whole alone where nearly all of it is of one polarisation. */
export function strongComponents(points: readonly PatternPoint[]): readonly Component[] {
  const most = (key: Component): number => Math.max(...points.map((p) => p.gain[key] ?? Number.NEGATIVE_INFINITY));
  const [h, v] = [most('horizontal'), most('vertical')];
  return Math.abs(h - v) > FAINT ? ['total'] : ['total', 'horizontal', 'vertical'];
}
