import { GivenError } from '#engine';
import { type Aim, type SearchRequest, type Space, spaceOf, Trials } from '#find';
import { readDrawerFile } from '#set-file';
import { givenProblem } from '#tell';
import { type Answer, type Document, readerOf } from '../document.ts';

/** What is looked for in a drawer. */
export interface FindAsked {
  readonly aim: Aim;
  /** indices of stations that must be on the dial and count; empty: whichever is heard best */
  readonly wanted: SearchRequest['wanted'];
  /** that the dial must reach from end to end [Hz]; left out: only stations count */
  readonly band?: SearchRequest['band'];
  /** the same seed goes the same way */
  readonly seed: number;
}

export interface FindGiven {
  readonly document: Document;
  readonly asked: FindAsked;
}

/** All that can be built, with what has been tried of it. */
export interface LaidOut {
  readonly space: Space;
  readonly trials: Trials;
}

/** Drawers that stay laid out: the one searched, and the one searched before. */
const KEPT = 2;
const known = new Map<string, LaidOut>();

/**
 * Works on what a drawer holds at its place; the document need not hold a set. What it says that cannot be comes back as problems.
 *
 * A thread that was started anew lays the drawer out again: nothing but the time of trials is lost.
 */
export async function onDrawer<T>({ document, asked }: FindGiven, work: (laid: LaidOut) => T | Promise<T>): Promise<Answer<T>> {
  const read = readDrawerFile(document.text, { read: readerOf(document) });
  if (!read.ok) return read;
  const { place, ear, programme, drawer } = read.value;
  const request: SearchRequest = {
    place,
    listener: { ear, programme },
    drawer,
    wanted: asked.wanted,
    ...(asked.band && { band: asked.band }),
  };
  try {
    return { ok: true, value: await work(laidOut(request)) };
  } catch (e) {
    if (!(e instanceof GivenError)) throw e;
    return { ok: false, problems: [givenProblem(e, read.source)] };
  }
}

function laidOut(request: SearchRequest): LaidOut {
  const key = JSON.stringify(request);
  let laid = known.get(key);
  if (!laid) {
    const space = spaceOf(request);
    laid = { space, trials: new Trials(space) };
  }
  known.delete(key);
  known.set(key, laid);
  const oldest = known.keys().next();
  if (known.size > KEPT && !oldest.done) known.delete(oldest.value);
  return laid;
}
