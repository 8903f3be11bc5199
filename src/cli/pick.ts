import type { Figure } from '#engine';
import { workingText } from '#tell';
import { nearestWord } from '#units';
import { BadFile } from './bad-file.ts';
import { bold } from './colour.ts';

/** Index of the station asked for, or all of them. */
export function pickStations(names: readonly string[], wanted: string | undefined): readonly number[] {
  if (wanted === undefined) return names.map((_, k) => k);
  const k = names.findIndex((n) => n.toLowerCase() === wanted.toLowerCase());
  if (k >= 0) return [k];
  throw new BadFile(`No station "${wanted}" at this place. There are: ${names.join(', ')}.`);
}

/** Workings of the figures whose name is, or ends in, the one asked for, under the headings they belong to. */
export function workings(groups: readonly { readonly heading: string; readonly figures: readonly Figure[] }[], wanted: string): string {
  const found = groups
    .map((g) => ({ ...g, figures: g.figures.filter((f) => f.name === wanted || f.name.endsWith(`.${wanted}`)) }))
    .filter((g) => g.figures.length > 0);
  if (found.length > 0) return found.map((g) => [bold(g.heading), ...g.figures.map(workingText)].join('\n')).join('\n\n');
  const names = [...new Set(groups.flatMap((g) => g.figures.map((f) => f.name)))];
  const near = nearestWord(wanted, names);
  throw new BadFile(`No figure "${wanted}"${near ? `; did you mean "${near}"?` : '.'} There are:\n  ${names.join('\n  ')}`);
}
