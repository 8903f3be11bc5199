import { CLASSES, classOf, LOOK } from './dot-classes.ts';
import type { Dots, Spread } from './dots.ts';
import { valueText } from './number-text.ts';

/** What the picture shows, for those who do not see it. */
export function dotsWords({ dots, meant, spread, x }: Dots): string {
  if (dots.length === 0) return 'No set is built yet.';
  const counts = CLASSES.flatMap((c) => {
    const count = dots.filter((d) => classOf(d) === c).length;
    return count === 0 ? [] : [`${LOOK[c].words}: ${count}`];
  });
  const silent = dots.filter((d) => d.x !== null && d.headroom === null).length;
  const value = (v: number, unit: string): string => valueText(Number(v.toPrecision(3)), unit);
  const along = (v: number): string => value(v, x.unit ?? '');
  const told = (what: string, s: Spread, write: (v: number) => string): string =>
    `${what}: from ${write(s[0])} to ${write(s[2])} in 80 of 100, half of them below ${write(s[1])}.`;
  const decibels = (v: number): string => value(v, 'dB');
  return [
    `${dots.length} ${dots.length === 1 ? 'set' : 'sets'} built on paper. ${counts.join('; ')}.`,
    ...(silent > 0 ? [`Of no sound at all, drawn on the lower edge: ${silent}.`] : []),
    ...(spread.x ? [told(x.label, spread.x, along)] : []),
    ...(spread.headroom ? [told('Best band over what the ear needs', spread.headroom, decibels)] : []),
    meant.x === null
      ? 'As meant, the set does not reach the station.'
      : `As meant: ${along(meant.x)}, ${meant.headroom === null ? 'no sound' : decibels(meant.headroom)}.`,
  ].join(' ');
}
