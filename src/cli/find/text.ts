import { advantages, type Found, frontDots, heardBest, pointOf, type Search, type Space, setFileOf, usedParts, whyNothing } from '#find';
import { advantageWords, cautions, NOTHING_FOUND, oddsSentence, pointsText, reasonWords, setWords, verdictSentence } from '#tell';
import { bold, dim } from '../colour.ts';
import { wrap } from '../table.ts';
import { aimText } from './asked.ts';
import type { Odds } from './hands.ts';

const WIDTH = 96;

/** What was found, for a person. */
export function findText(heading: string, search: Search, best: readonly Found[], odds: readonly (Odds | null)[]): string {
  const { space, state } = search;
  const { trials, done, through, seed } = state;
  const how =
    done && through !== null
      ? `all ${trials} sets that can be built and could tune were tried: there is no better one`
      : `${trials} sets tried, seed ${seed}`;
  const out = [bold(`${heading}: sets for ${space.place.name}, by ${aimText(state.aim)}`), dim(how)];
  if (best.length === 0) out.push(`\n${NOTHING_FOUND}`, ...whyNothing(search).map((r) => wrap(`- ${reasonWords(r)}`, WIDTH, '  ')));
  best.forEach((f, k) => {
    out.push(`\n${foundText(space, f, odds[k] ?? null, best[k + 1], k)}`);
  });
  const warnings = [...new Set(best.flatMap((f) => cautions(f.set, f.reports)))];
  if (warnings.length > 0) out.push(`\n${bold('Cautions')}`, ...warnings.map((w) => wrap(`- ${w}`, WIDTH, '  ')));
  return out.join('\n');
}

function foundText(space: Space, f: Found, odds: Odds | null, next: Found | undefined, k: number): string {
  const detector = usedParts(space, f.design).find((p) => p.path === 'detector')?.title;
  const lines = [bold(`${k + 1}. ${pointsText(f.worth)}`), ...setWords(f.set, detector).map((w) => wrap(w, WIDTH, '  '))];
  for (const report of f.reports) lines.push(wrap(verdictSentence(report, undefined), WIDTH));
  const station = space.place.stations[heardBest(f.looks).station]!.name;
  if (odds) lines.push(wrap(oddsSentence(station, odds), WIDTH));
  const better = next ? advantages(f, next).map(advantageWords) : [];
  if (better.length > 0) lines.push(wrap(`Better than the next: ${better.join(', ')}.`, WIDTH));
  return lines.join('\n');
}

/** What was found, for a program. */
export function findJson(file: string, search: Search, best: readonly Found[], odds: readonly (Odds | null)[]): unknown {
  const { space, state } = search;
  return {
    file,
    aim: state.aim,
    seed: state.seed,
    trials: state.trials,
    all: state.done && state.through !== null,
    sets: best.map((f, k) => ({
      worth: f.worth,
      set: JSON.parse(setFileOf(space, f, `Found ${k + 1}`, '')),
      stations: f.reports.map((r, i) => ({ name: r.station, verdict: r.verdict, ...f.looks[i]! })),
      odds: oddsJson(odds[k] ?? null),
      betterThanNext: best[k + 1] ? advantages(f, best[k + 1]!) : [],
    })),
    front: state.front.map(({ design: _, ...p }) => p),
    why: whyNothing(search).map((r) => ({ ...r, words: reasonWords(r) })),
  };
}

const oddsJson = (o: Odds | null) => o && { heard: o.heard, understood: o.understood, covers: o.covers, samples: o.samples };

/** The sets found and those of which none is louder, cleaner and easier to tune at once, as dots of a picture. */
export const dotsOf = (search: Search, best: readonly Found[]) =>
  frontDots(
    search.state.front,
    best.map((f) => pointOf(f.design, f.looks)),
  );
