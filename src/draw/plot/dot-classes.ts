import type { Role } from '../svg/palette.ts';
import type { Speck } from '../svg/specks.ts';
import type { BuiltDot } from './dots.ts';

/** How a set that was built does; `lost` does not reach the station on its dial. */
export type DotClass = 'understood' | 'heard' | 'silent' | 'lost';

/** In the order they are drawn: what is rarest comes last. */
export const CLASSES: readonly DotClass[] = ['understood', 'heard', 'silent', 'lost'];

/** A shape and a tone for each, and how thick its lines are, in radii. */
export const LOOK: Readonly<
  Record<DotClass, { readonly shape: Speck; readonly stroke: Role; readonly thickness: number; readonly words: string }>
> = {
  understood: { shape: 'dot', stroke: 'series-1', thickness: 2, words: 'understood' },
  heard: { shape: 'diamond', stroke: 'series-2', thickness: 0.45, words: 'heard, but not understood' },
  silent: { shape: 'cross', stroke: 'series-3', thickness: 0.5, words: 'not heard' },
  lost: { shape: 'bar', stroke: 'quiet', thickness: 0.6, words: 'station not reached on the dial' },
};

export const classOf = (d: BuiltDot): DotClass => (d.x === null ? 'lost' : d.outcome);
