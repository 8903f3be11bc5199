import { SPEED_OF_LIGHT } from '../../constants.ts';
import { GivenError } from '../../given-error.ts';
import type { Layout } from './joints.ts';
import { separation } from './point.ts';

/** More unknowns than this would take seconds and hundreds of megabytes. */
export const MOST_UNKNOWNS = 1000;
/** Segments to a wavelength to begin with: published tables of beams were made, and are met, at ten to twelve a half-wave. */
export const BASE_DENSITY = 22;
/** Segments on the whole of a structure much smaller than that. */
const LEAST_ON_WHOLE = 8;
/** A segment is left at least this many radii long: the feed's gap is as wide as a segment, and is never narrower than the wire is thick. */
export const LEAST_RADII = 4;
/** Longest segment a forced number may give [wavelengths]: the half-bases, sines of kd in the denominator, fail at a half. */
const LONGEST = 0.35;

export const spanLengths = (layout: Layout): readonly number[] =>
  layout.spans.map((s) => separation(layout.nodes[s.from]!, layout.nodes[s.to]!));

/**
 * Segments on each span for a density of segments to the wavelength.
 *
 * @param density - segments to the wavelength at `frequency`
 * @throws GivenError where there would be more unknowns than the limit
 */
export function countsByDensity(layout: Layout, frequency: number, density: number): readonly number[] {
  const lengths = spanLengths(layout);
  const whole = lengths.reduce((a, b) => a + b, 0);
  const least = (LEAST_ON_WHOLE * density) / BASE_DENSITY;
  const counts = lengths.map((length, i) => {
    const wanted = Math.max(Math.ceil((length * frequency * density) / SPEED_OF_LIGHT - 1e-9), Math.round((least * length) / whole), 1);
    return Math.max(1, Math.min(wanted, Math.floor(length / (LEAST_RADII * layout.spans[i]!.radius))));
  });
  return checked(layout, counts, frequency, 'aerial.wires');
}

/**
 * A forced number of segments, shared out by length.
 *
 * @throws GivenError where it is fewer than the spans, or gives segments too short or too long
 */
export function countsByTotal(layout: Layout, frequency: number, total: number): readonly number[] {
  const path = 'aerial.segments';
  if (!Number.isInteger(total) || total < layout.spans.length)
    throw new GivenError(
      path,
      `${total}`,
      `there are ${layout.spans.length} pieces between joints, feed and loads`,
      'Give a whole number, at least that.',
    );
  const lengths = spanLengths(layout);
  const counts = lengths.map(() => 1);
  // the longest segment is halved, so to speak, until all are given out: equal lengths stay equal
  for (let left = total - counts.length; left > 0; left--) {
    let longest = 0;
    for (let i = 1; i < counts.length; i++) if (lengths[i]! / counts[i]! > (lengths[longest]! / counts[longest]!) * (1 + 1e-9)) longest = i;
    counts[longest] = counts[longest]! + 1;
  }
  counts.forEach((n, i) => {
    const { radius, wire } = layout.spans[i]!;
    if (lengths[i]! / n < radius && n > 1)
      throw new GivenError(
        path,
        `${total}`,
        `segments of wire ${wire} would be ${((1000 * lengths[i]!) / n).toPrecision(3)} mm long, shorter than its radius`,
        'Give fewer segments.',
      );
  });
  return checked(layout, counts, frequency, path);
}

function checked(layout: Layout, counts: readonly number[], frequency: number, path: string): readonly number[] {
  const total = counts.reduce((a, b) => a + b, 0);
  if (total > MOST_UNKNOWNS)
    throw new GivenError(
      path,
      `${total} segments`,
      `at most ${MOST_UNKNOWNS} are taken`,
      'Leave out wires, shorten them, or ask at a lower frequency.',
    );
  const lengths = spanLengths(layout);
  counts.forEach((n, i) => {
    if ((lengths[i]! / n) * frequency > SPEED_OF_LIGHT * LONGEST)
      throw new GivenError(
        path,
        `${total} segments`,
        `on wire ${layout.spans[i]!.wire} they are longer than ${LONGEST} wavelength at ${(frequency / 1e6).toPrecision(4)} MHz`,
        'Give more segments.',
      );
  });
  return counts;
}
