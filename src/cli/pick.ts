import type { Figure } from '#engine';
import { workingText } from '#tell';
import { nearestWord } from '#units';
import { BadFile } from './bad-file.ts';

/** Index of the station asked for, or all of them. */
export function pickStations(names: readonly string[], wanted: string | undefined): readonly number[] {
  if (wanted === undefined) return names.map((_, k) => k);
  const k = names.findIndex((n) => n.toLowerCase() === wanted.toLowerCase());
  if (k >= 0) return [k];
  throw new BadFile(`No station "${wanted}" at this place. There are: ${names.join(', ')}.`);
}

/** Workings of the figures whose name is, or ends in, the one asked for. */
export function workings(figures: readonly Figure[], wanted: string): string {
  const found = figures.filter((f) => f.name === wanted || f.name.endsWith(`.${wanted}`));
  if (found.length > 0) return found.map(workingText).join('\n\n');
  const names = [...new Set(figures.map((f) => f.name))];
  const near = nearestWord(wanted, names);
  throw new BadFile(`No figure "${wanted}"${near ? `; did you mean "${near}"?` : '.'} There are:\n  ${names.join('\n  ')}`);
}
