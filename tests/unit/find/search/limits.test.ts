import { describe, expect, test } from 'vitest';
import { type Arrival, tunedTo } from '#engine';
import { answer, beginSearch, type Limits, only, type Reason, Search, type SearchRequest, spaceOf, USUAL_LIMITS, whyNothing } from '#find';
import { reasonWords } from '#tell';
import { type Given, requestOf } from './drawers.ts';

const BARE: Given = {
  fromLibrary: ['air-variable-20', 'germanium-point-contact', 'ceramic-earpiece'],
  wires: { bare: { values: { wireDiameter: '1 mm' }, length: '60 cm', tapEvery: 2 } },
  formers: [{ diameter: '10 mm', length: '14 mm' }],
  resistors: ['470 k'],
};
const without = (key: string, change: Given = {}): Given => {
  const { [key]: _, ...rest } = BARE;
  return { ...rest, ...change };
};
const searched = (request: SearchRequest, limits: Limits = USUAL_LIMITS): Search => {
  const space = spaceOf(request);
  const search = new Search(space, beginSearch(space, { aim: only('loudness'), seed: 1, limits }));
  search.step(400);
  return search;
};
const reasons = (given: Given, limits?: Limits, band?: SearchRequest['band']): readonly Reason[] =>
  whyNothing(searched({ ...requestOf(given), ...(band && { band }) }, limits));

describe('why a drawer gives nothing', { timeout: 60_000 }, () => {
  test('a drawer that gives something gives no reasons', () => expect(reasons(BARE)).toEqual([]));

  test('each thing that is not there is told by itself', () => {
    const cases: readonly (readonly [Given, object, RegExp])[] = [
      [without('wires'), { kind: 'no-part', part: 'wires' }, /no wire/],
      [without('formers'), { kind: 'no-part', part: 'formers' }, /nothing to wind/],
      [
        without('fromLibrary', { fromLibrary: ['air-variable-20', 'ceramic-earpiece'] }),
        { kind: 'no-part', part: 'detectors' },
        /no detector/,
      ],
      [without('resistors'), { kind: 'no-direct-path', earpieces: ['ceramic-earpiece'] }, /direct current/],
      // 1 mm round 2 mm; 1 mm on 40 mm that does not stay; four turns and more on 2 mm; a coil of three centimetres of wire
      [without('formers', { formers: [{ diameter: '2 mm' }] }), { kind: 'not-wound', rules: ['bend'] }, /too thick/],
      [without('formers', { formers: [{ diameter: '40 mm' }] }), { kind: 'not-wound', rules: ['self-holding'] }, /holds itself/],
      [
        without('formers', { formers: [{ diameter: '6 mm', length: '2 mm' }] }),
        { kind: 'not-wound', rules: ['former-length'] },
        /longer than/,
      ],
      [
        without('wires', { wires: { bare: { values: { wireDiameter: '1 mm' }, length: '3 cm' } } }),
        { kind: 'not-wound', rules: ['wire-length'] },
        /so much wire/,
      ],
    ];
    for (const [given, reason, words] of cases) {
      const told = reasons(given);
      expect(told).toEqual([reason]);
      expect(reasonWords(told[0]!)).toMatch(words);
    }
  });

  test('a coil that is too large: what is too much is near what Thomson leaves', () => {
    // one turn 41 mm across of 1 mm wire: mu0 r (ln(8 r / a) - 2) = 98 nH, with leads and wiring of 11 cm at up to 0.8 nH a millimetre (common practice, no
    // source) at most 186 nH: 26 to 14 pF resonate at 99.2 MHz, and there are 30 pF and up to 4 pF of strays
    const [told] = reasons(
      without('formers', {
        formers: [{ diameter: '40 mm', length: '2.5 mm', stays: { permittivity: 1 } }],
        fromLibrary: ['germanium-point-contact', 'ceramic-earpiece'],
        capacitors: { large: { values: { minimum: '30 pF', maximum: '90 pF' } } },
      }),
    );
    expect(told).toMatchObject({ kind: 'not-reached', station: 'Fen Talk', frequency: 99.2e6 });
    const { missing } = told as Extract<Reason, { kind: 'not-reached' }>;
    expect(missing!).toBeLessThan(-3e-12);
    expect(missing!).toBeGreaterThan(-20e-12);
    expect(reasonWords(told!)).toMatch(/^No capacitor of the drawer reaches Fen Talk \(99\.2 MHz\).* too much at least capacitance\.$/);
  });

  test('a dial that is too sharp, and one without room at its end', () => {
    const sharp = reasons(BARE, { ...USUAL_LIMITS, sharpest: { vhf: 20e3, below: 20e3 } });
    expect(sharp).toMatchObject([{ kind: 'too-sharp', limit: 20e3 }]);
    expect(reasonWords(sharp[0]!)).toMatch(/the sharpest allowed is 20 kHz a degree, and the best was \d+ kHz a degree/);
    const best = (sharp[0] as Extract<Reason, { kind: 'too-sharp' }>).best;
    expect(best).toBeGreaterThan(20e3);
    // a share of a half asks for the very middle
    expect(reasons(BARE, { ...USUAL_LIMITS, margin: 0.5 })).toMatchObject([{ kind: 'at-the-end', margin: 0.5 }]);
  });
});

describe('a band that is wanted', { timeout: 60_000 }, () => {
  test('rival: what is found covers it, by the frequency at either end of the rotation less its margin', () => {
    const band = { from: 95e6, to: 104e6 };
    const search = searched({ ...requestOf(BARE), band });
    const [top] = answer(search, 1);
    const { receiver, signals } = search.trials.reception(top!.design);
    const arrival: Arrival = signals[0]!.arrival;
    const { margin } = USUAL_LIMITS;
    const ends = [margin, 1 - margin].map((share) => tunedTo(receiver, arrival, share * receiver.tank.rotation)!);
    expect(Math.min(...ends)).toBeLessThanOrEqual(band.from * (1 + 1e-6));
    expect(Math.max(...ends)).toBeGreaterThanOrEqual(band.to * (1 - 1e-6));
    // without the band the best has less of it
    expect(top!.looks[0]!.band).toHaveLength(2);
  });

  test('one that no dial covers is told by the end that is out of reach; one that is none is refused', () => {
    const told = reasons(BARE, USUAL_LIMITS, { from: 30e6, to: 104e6 });
    expect(told.map((r) => r.kind)).toContain('band-not-covered');
    expect(told.map(reasonWords).join(' ')).toMatch(
      /No set covers the band to its end at 30 MHz: the nearest lacks \d+ pF at full capacitance/,
    );
    expect(() => spaceOf({ ...requestOf(BARE), band: { from: 2, to: 1 } })).toThrow(/band/);
  });
});
