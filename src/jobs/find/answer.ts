import {
  advantages,
  answer,
  beginSearch,
  type Design,
  type Found,
  found,
  keyOf,
  pointOf,
  Search,
  type SearchState,
  setFileOf,
  usedParts,
  whyNothing,
} from '#find';
import { advantageWords, cautions, reasonWords, setWords, verdictSentence } from '#tell';
import type { Answer } from '../document.ts';
import { type FindGiven, type LaidOut, onDrawer } from './laid-out.ts';

/** What a set is judged by, at the station it is heard best at. */
export interface Merits {
  /** index of the station */
  readonly station: number;
  /** over what the ear needs [dB] */
  readonly headroom: number;
  /** programme's distortion, relative to it [dB] */
  readonly distortion: number;
  /** speed of the dial [Hz per degree] */
  readonly hertzPerDegree: number;
}

/** A set that was found, as a person is shown it. */
export interface FoundSet extends Merits {
  /** the same for the same set */
  readonly key: string;
  readonly design: Design;
  /** by the aim [points] */
  readonly worth: number;
  /** what it is made of, a line a stage */
  readonly words: readonly string[];
  /** one for each station that counts, the one heard best first */
  readonly stations: readonly { readonly name: string; readonly outcome: string; readonly sentence: string }[];
  /** in what it is better than the next of the list; empty for the last */
  readonly better: readonly string[];
  readonly cautions: readonly string[];
  /** set file that holds it, with the place and the drawer it was found for */
  readonly text: string;
}

/** A set on the front of what can be had, to be asked for by its design. */
export interface FrontSet extends Merits {
  readonly key: string;
  readonly design: Design;
}

/** How a search stands. */
export interface FindAnswer {
  readonly trials: number;
  /** every set there is was tried */
  readonly all: boolean;
  /** best first, each different from those before it */
  readonly sets: readonly FoundSet[];
  /** where there is no set: limit by limit what stood in the way */
  readonly why: readonly string[];
  readonly front: readonly FrontSet[];
}

export interface AnswerGiven extends FindGiven {
  readonly state: SearchState;
  /** sets wanted */
  readonly most: number;
}

/** The best different sets found so far, worked out in full. */
export function findAnswer(given: AnswerGiven): Promise<Answer<FindAnswer>> {
  return onDrawer(given, (laid) => {
    const search = new Search(laid.space, given.state, laid.trials);
    const best = answer(search, given.most);
    const { trials, done, through, front } = search.state;
    return {
      trials,
      all: done && through !== null,
      sets: best.map((f, k) => foundSet(laid, f, best[k + 1])),
      why: best.length > 0 ? [] : whyNothing(search).map(reasonWords),
      front: front.map((p) => ({ key: keyOf(p.design), ...p })),
    };
  });
}

/** One set by its design, as the list of the best shows it. */
export function findSet(given: FindGiven & { readonly design: Design }): Promise<Answer<FoundSet>> {
  return onDrawer(given, (laid) => {
    const search = new Search(laid.space, beginSearch(laid.space, { ...given.asked, small: 0 }), laid.trials);
    return foundSet(laid, found(search, given.design), undefined);
  });
}

function foundSet({ space }: LaidOut, f: Found, next: Found | undefined): FoundSet {
  const detector = usedParts(space, f.design).find((p) => p.path === 'detector')?.title;
  const { station, headroom, distortion, hertzPerDegree } = pointOf(f.design, f.looks);
  const order = f.looks.map((g, k) => ({ g, report: f.reports[k]! })).sort((a, b) => b.g.headroom - a.g.headroom);
  return {
    key: keyOf(f.design),
    design: f.design,
    worth: f.worth,
    station,
    headroom,
    distortion,
    hertzPerDegree,
    words: setWords(f.set, detector),
    stations: order.map(({ report }) => ({
      name: report.station,
      outcome: report.verdict.outcome,
      sentence: verdictSentence(report, undefined),
    })),
    better: next ? advantages(f, next).map(advantageWords) : [],
    cautions: cautions(f.set, f.reports),
    text: setFileOf(space, f, '', ''),
  };
}
