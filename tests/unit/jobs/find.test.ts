import { afterAll, describe, expect, test } from 'vitest';
import {
  answer,
  beginSearch,
  betweenHeats,
  keyOf,
  only,
  Search,
  type SearchHand,
  type SearchState,
  setFileOf,
  shareOut,
  spaceOf,
  ToleranceRun,
  toWorkFrom,
  usedParts,
} from '#find';
import type { FindAsked } from '#jobs';
import { LIBRARY, type PartCategory } from '#parts';
import { readDrawerFile, readSetFile } from '#set-file';
import { verdictSentence } from '#tell';
import { bench, document, ok } from './examples.ts';

const jobs = bench();
afterAll(() => jobs.close());
const drawer = document('drawer.json');
const asked = { aim: only('speech'), wanted: [0], seed: 3 };
const given = { document: drawer, asked };

/** The same by way of the search alone, as the command line goes. */
function alone(trials: number): Search {
  const read = readDrawerFile(drawer.text, { read: (name) => drawer.files![name]! });
  if (!read.ok) throw new Error('the demo reads');
  const { place, ear, programme, drawer: parts } = read.value;
  const space = spaceOf({ place, listener: { ear, programme }, drawer: parts, wanted: asked.wanted });
  const search = new Search(space, beginSearch(space, asked));
  search.step(trials);
  return search;
}

describe('a search through a drawer as jobs', () => {
  test('in portions and over the line it goes the very way of the search itself, and tells of each set what the command line tells', async () => {
    const state = await searched(given, (s) => s.trials >= 150 && betweenHeats(s));
    const search = alone(150);
    while (!betweenHeats(search.state)) search.step(1);
    expect(state).toEqual(search.state);
    const best = answer(search, 2);
    const told = ok(await jobs.call('findAnswer', { ...given, state, most: 2 }));
    expect(told.sets.map((s) => s.key)).toEqual(best.map((f) => keyOf(f.design)));
    expect(told.sets.map((s) => s.stations[0]!.sentence)).toEqual(best.map((f) => verdictSentence(f.reports[0]!, undefined)));
    expect(told.sets[0]!.text).toBe(setFileOf(search.space, best[0]!, '', ''));
    expect(readSetFile(told.sets[0]!.text).ok).toBe(true);
    expect(told.front.map((p) => p.headroom)).toEqual(search.state.front.map((p) => p.headroom));

    const [first] = best;
    const { place, listener } = search.space;
    const run = new ToleranceRun({ place, set: first!.set, listener, station: 0 }, { parts: usedParts(search.space, first!.design) });
    run.step(24);
    const odds = ok(await jobs.call('findOdds', { ...given, design: first!.design, samples: 24 }));
    expect(odds.heard).toEqual(run.result().heard);
    expect(odds.sentence).toContain('As built by hand of such parts: ');
    const again = ok(await jobs.call('findSet', { ...given, design: first!.design }));
    expect(again).toEqual({ ...told.sets[0], better: [] });
  });

  test('how large a search is; what cannot be comes back with its line', async () => {
    const plan = ok(await jobs.call('findPlan', given));
    expect(plan.structures).toBeGreaterThan(5);
    expect(plan.whole).toBe(false);
    const wrong = await jobs.call('findPlan', { document: { ...drawer, text: drawer.text.replace('"60 mm"', '"60 apples"') }, asked });
    expect(wrong).toMatchObject({ ok: false, problems: [{ path: 'drawer.formers[0].length' }] });
  });

  test('where nothing is found it is told why: what lacks, or the band that no dial reaches', async () => {
    // a large drawer, so that going through all that it holds for nothing would never end
    const without = (lists: readonly string[], categories: readonly PartCategory[]) => {
      const { drawer: held, ...file } = JSON.parse(drawer.text) as { drawer: Record<string, unknown> };
      const kept = Object.fromEntries(Object.entries(held).filter(([key]) => ![...lists, ...categories].includes(key)));
      const names = ((held.fromLibrary ?? []) as string[]).filter((name) => !categories.some((c) => Object.hasOwn(LIBRARY[c], name)));
      return { ...drawer, text: JSON.stringify({ ...file, drawer: { ...kept, fromLibrary: names } }) };
    };
    expect((await answered(without([], ['detectors']))).why).toEqual(['There is no detector in the drawer: add one.']);
    const blocked = without(['resistors', 'chokes'], ['transformers', 'earpieces']);
    const piezo = JSON.parse(blocked.text) as { drawer: { fromLibrary: string[] } };
    piezo.drawer.fromLibrary.push('ceramic-earpiece');
    expect((await answered({ ...drawer, text: JSON.stringify(piezo) })).why.join(' ')).toMatch(
      /direct current of the detector past ceramic-earpiece/,
    );
    // a dial over a decade would take a hundred times the capacitance from end to end
    const wide = await answered(drawer, { ...asked, band: { from: 30e6, to: 300e6 } });
    expect(wide.sets).toEqual([]);
    expect(wide.why.join(' ')).toMatch(/No set covers the band to its end at (30|300) MHz|all of them at once by none/);
    expect((await answered(drawer)).why).toEqual([]);
  });
});

describe('the drawer that holds the parts of a set', () => {
  test('it reads, and a search through it builds that set or a better one', async () => {
    const set = document('rod-and-drop-wire.json');
    const parts = ok(await jobs.call('drawerOfSet', set));
    expect(parts).toMatchObject({ rods: [{ length: '700 mm', count: 1 }], formers: [{ diameter: '10 mm' }], resistors: ['1 Mohm'] });
    const held = { ...set, text: JSON.stringify({ ...JSON.parse(set.text), drawer: parts }) };
    const aim = only('loudness');
    const sought = { document: held, asked: { aim, wanted: [0], seed: 1 } };
    const state = await searched(sought, (s) => s.done || s.trials > 900);
    const { sets } = ok(await jobs.call('findAnswer', { ...sought, state, most: 1 }));
    const own = ok(await jobs.call('evaluate', { document: set, station: 0 })).stations[0]!;
    // the wire that drops from the rod is of another thickness in the search, a fraction of a decibel
    expect(sets[0]!.headroom).toBeGreaterThan(own.headroom! - 1);
  });
});

interface Given {
  readonly document: typeof drawer;
  readonly asked: FindAsked;
}

/** What is found in some 150 trials. */
async function answered(held: typeof drawer, wish: FindAsked = asked) {
  const sought = { document: held, asked: wish };
  const state = await searched(sought, (s) => s.trials > 150);
  return ok(await jobs.call('findAnswer', { ...sought, state, most: 1 }));
}

/** A search by two threads' worth of portions over the line. */
async function searched({ document, asked }: Given, enough: (s: SearchState) => boolean): Promise<SearchState> {
  const { state } = ok(await jobs.call('findPlan', { document, asked }));
  const hand: SearchHand = async (from, what) =>
    ok(await jobs.call('findPortion', { document, asked, state: toWorkFrom(from), what, milliseconds: 20 }));
  return shareOut(state, [hand, hand], (s) => !enough(s));
}
