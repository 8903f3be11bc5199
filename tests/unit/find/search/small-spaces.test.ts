import { describe, expect, test } from 'vitest';
import { reportStation } from '#engine';
import { beginSearch, everyDesign, found, keyOf, only, Search, Trials, USUAL_LIMITS, worth } from '#find';
import { SMALL } from './drawers.ts';

// every set of a drawer is worked out: minutes on a machine that has other work
describe('identity: on drawers where everything can be tried, the race finds the best there is', { timeout: 300_000 }, () => {
  for (const [name, make] of Object.entries(SMALL))
    test(name, () => {
      const space = make();
      const trials = new Trials(space);
      const all = [...everyDesign(space)];
      expect(all.length).toBeGreaterThan(40);
      expect(all.length).toBeLessThan(700);
      expect(new Set(all.map(keyOf)).size).toBe(all.length);
      const aim = only('loudness');
      const points = all.map((d) => {
        const trial = trials.of(d);
        return trial ? worth(space, trial, aim, USUAL_LIMITS) : Number.NEGATIVE_INFINITY;
      });
      const best = Math.max(...points);
      // there is something to find: most sets are much worse
      expect(points.filter((p) => p > best - 1).length).toBeLessThan(all.length / 10);
      for (const seed of [1, 2]) {
        const search = new Search(space, beginSearch(space, { aim, seed, small: 0 }), trials);
        search.step(3 * all.length);
        expect(Math.max(...Object.values(search.state.best).map((s) => s.worth)), `seed ${seed}`).toBe(best);
      }
      const through = new Search(space, beginSearch(space, { aim, seed: 1, small: 5000 }), trials);
      while (!through.state.done) through.step(500);
      expect(through.state.trials).toBe(all.length);
      expect(Math.max(...Object.values(through.state.best).map((s) => s.worth))).toBe(best);
      // the quick look of the search ranks as the full report does: nothing is more than 0.1 dB better by it
      const leading = all.filter((_, k) => points[k]! > best - 0.3).slice(0, 12);
      const full = leading.map((d) => found(through, d).worth);
      const chosen = all[points.indexOf(best)]!;
      expect(Math.max(...full) - found(through, chosen).worth).toBeLessThan(0.1);
    });

  test('rival: counted by hand, a coil alone has as many designs as there are turns, pitches, taps and parts', () => {
    const space = SMALL['a coil that is the aerial, two detectors, two formers']!();
    // the rest of the wire would do for a very short dipole too: not counted here
    const alone = [...everyDesign(space)].filter((d) => space.aerials[d.aerial]!.description.kind === 'coil');
    // 1.5 mm wire: pitches of 1.65, 1.95, 2.4, 3, 3.75 and 4.5 mm; leads, wiring and the wire itself taken off 30 cm of wire
    let count = 0;
    for (const [former, length] of [
      [10e-3, 10e-3],
      [16e-3, 8e-3],
    ] as const)
      for (let halves = 2; halves <= 20; halves++)
        for (const pitch of halves === 2 ? [1.65e-3] : [1.65e-3, 1.95e-3, 2.4e-3, 3e-3, 3.75e-3, 4.5e-3]) {
          const turns = halves / 2;
          const wire = turns * Math.hypot(Math.PI * (former + 1.5e-3), pitch) + 2 * (5e-3 + former / 2) + 20e-3 + former;
          if (turns * pitch + 1.5e-3 > length || wire > 0.3) continue;
          // across the coil or on a tap at each whole turn inside it, two detectors, two resistors
          count += (1 + Math.ceil(turns) - 1) * 2 * 2;
        }
    expect(alone).toHaveLength(count);
  });

  test('a report of the winner says what the search says', () => {
    const space = SMALL['a dipole of rods, taps at whole turns, magnetic phones with a transformer or without']!();
    const search = new Search(space, beginSearch(space, { aim: only('speech'), seed: 1 }));
    search.step(60);
    const [top] = Object.values(search.state.best).sort((a, b) => b.worth - a.worth);
    const whole = found(search, top!.design);
    const report = reportStation(search.trials.reception(top!.design), 0);
    expect(whole.looks[0]!.sii).toBe(report.verdict.sii);
    expect(whole.looks[0]!.headroom).toBe(Math.max(...report.heard!.evaluation.hearing.headroom));
  });
});
