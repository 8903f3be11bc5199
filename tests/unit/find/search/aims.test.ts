import { describe, expect, test } from 'vitest';
import { AIM_NAMES, type Aim, everyDesign, type Glance, only, Trials, USUAL_LIMITS, worth } from '#find';
import { AIMS } from '#tell';
import { SMALL } from './drawers.ts';

describe('mixed aims', { timeout: 60_000 }, () => {
  const space = SMALL['a dipole of rods, taps at whole turns, magnetic phones with a transformer or without']!();
  const trials = new Trials(space);
  const sets = [...everyDesign(space)].map((d) => trials.of(d)!).filter((t) => worth(space, t, only('loudness'), USUAL_LIMITS) > -12);
  const bestBy = (aim: Aim): Glance =>
    sets.reduce((a, b) => (worth(space, b, aim, USUAL_LIMITS) > worth(space, a, aim, USUAL_LIMITS) ? b : a))[0]!;
  const mix = (shares: Partial<Aim>): Aim => ({ speech: 0, loudness: 0, clean: 0, stations: 0, ...shares });
  /** what each aim is about, more being better */
  const figures = { speech: (g: Glance) => g.sii, loudness: (g: Glance) => g.headroom, clean: (g: Glance) => -g.distortion } as const;
  const names = ['speech', 'loudness', 'clean'] as const;

  test('only shares matter, not their sum; a share of all is the aim alone', () => {
    for (const t of sets.slice(0, 20)) {
      const half = worth(space, t, mix({ speech: 0.5, loudness: 0.5 }), USUAL_LIMITS);
      expect(worth(space, t, mix({ speech: 50, loudness: 50 }), USUAL_LIMITS)).toBeCloseTo(half, 9);
      for (const name of AIM_NAMES)
        expect(worth(space, t, mix({ [name]: 7 }), USUAL_LIMITS)).toBeCloseTo(worth(space, t, only(name), USUAL_LIMITS), 9);
    }
  });

  // with a weighted sum, more weight on one aim never makes the chosen set worse by it nor better by the other
  test('limit: as one share grows at the cost of another, the set chosen never gets worse by it nor better by the other', () => {
    for (const a of names)
      for (const b of names.filter((n) => n !== a)) {
        let before: Glance | null = null;
        for (let k = 1; k < 20; k++) {
          const g = bestBy(mix({ [a]: k / 20, [b]: 1 - k / 20 }));
          if (before) {
            expect(figures[a](g)).toBeGreaterThanOrEqual(figures[a](before) - 0.05);
            expect(figures[b](g)).toBeLessThanOrEqual(figures[b](before) + 0.05);
          }
          before = g;
        }
      }
  });

  test('comparable: in equal shares neither aim is given up for the other', () => {
    for (const a of names)
      for (const b of names.filter((n) => n !== a)) {
        const all = sets.map((t) => figures[a](t[0]!)).sort((x, y) => x - y);
        // a compromise: more than half of all sets are worse by the one, and more than half by the other
        expect(figures[a](bestBy(mix({ [a]: 1, [b]: 1 }))), `${a} beside ${b}`).toBeGreaterThan(all[Math.floor(0.5 * all.length)]!);
      }
  });

  test('each aim has its words', () => {
    expect(AIMS.map((a) => a.name)).toEqual(AIM_NAMES);
    for (const { words } of AIMS) expect(words).toMatch(/^as .*: .*points?/);
  });
});
