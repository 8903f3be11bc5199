import type { Scatter } from './draft.ts';
import type { Trim } from './trims.ts';

/** What of a set is to be put right. */
export type Trimmed = 'dial' | 'loudness';

/** Less than this nobody hears [dB]; common practice, no source. */
const LEAST = 0.1;

/**
 * Trims that make good what one scatter did: for the dial one that takes it down and one that takes it up, for loudness those that make it louder, the best first.
 *
 * @returns none where only another piece helps
 */
export function mending({ key }: Pick<Scatter, 'key'>, ways: readonly Trim[], figure: Trimmed): readonly Trim[] {
  const apt = ways.filter((w) => w.mends.some((m) => key.startsWith(m)));
  if (figure === 'loudness') return apt.filter((w) => w.louder !== null && w.louder >= LEAST).sort((a, b) => b.louder! - a.louder!);
  const [down, up] = [apt.find((w) => w.moves < 0), apt.find((w) => w.moves > 0)];
  return [down, up].filter((w) => w !== undefined);
}
