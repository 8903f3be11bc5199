import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type AerialWire, C, GivenError, type SpacePoint, type WireStructure, wireAerialOf } from '#engine';

/** Whole millimetres: random doubles crowd round zero. */
const coordinate = fc.integer({ min: -1500, max: 1500 }).map((mm) => mm / 1000);
const place = fc.record({ x: coordinate, y: coordinate, z: coordinate });
const metal = fc.constantFrom('copper', 'aluminium', 'steel', 'lossless');

/** A tree of wires that grow from ends already there, a few closed into loops, a feed and a load somewhere. */
const structures = fc
  .record({
    root: place,
    tips: fc.array(fc.record({ from: fc.nat(5), to: place, diameter: fc.integer({ min: 1, max: 40 }).map((n) => n / 2000), metal }), {
      minLength: 1,
      maxLength: 5,
    }),
    close: fc.boolean(),
    feed: fc.record({ wire: fc.nat(4), at: fc.double({ min: 0.05, max: 0.95, noNaN: true }) }),
    load: fc.record({
      wire: fc.nat(4),
      at: fc.double({ min: 0.05, max: 0.95, noNaN: true }),
      resistance: fc.double({ min: 0, max: 300, noNaN: true }),
    }),
    ground: fc.constantFrom('free-space', 'perfect'),
  })
  .map(({ root, tips, close, feed, load, ground }): WireStructure => {
    const raise = (p: SpacePoint) => (ground === 'perfect' ? { ...p, z: p.z + 1.6 } : p);
    const ends: SpacePoint[] = [raise(root)];
    const wires: AerialWire[] = [];
    for (const t of tips) {
      const from = ends[t.from % ends.length]!;
      const to = raise(t.to);
      wires.push({ from, to, diameter: t.diameter, metal: t.metal as AerialWire['metal'] });
      ends.push(to);
    }
    if (close && ends.length > 2) wires.push({ from: ends.at(-1)!, to: ends[0]!, diameter: 0.003, metal: 'copper' });
    const on = (p: { wire: number; at: number }) => ({ wire: p.wire % wires.length, at: p.at });
    return {
      wires,
      feed: on(feed),
      loads: [{ place: on(load), kind: 'series', resistance: load.resistance }],
      ground: { kind: ground as 'free-space' | 'perfect' },
    };
  });

test('random wires are refused with a reason, or have a positive resistance, finite results and no more loss than resistance', () => {
  let solved = 0;
  fc.assert(
    fc.property(
      structures,
      fc.double({ min: 20e6, max: 120e6, noNaN: true }),
      fc.double({ min: 0, max: 6.2, noNaN: true }),
      (structure, frequency, azimuth) => {
        let at: ReturnType<ReturnType<typeof wireAerialOf>['at']>;
        try {
          at = wireAerialOf(structure, null).at(frequency, { azimuth, elevation: 0.1 });
        } catch (error) {
          expect(error).toBeInstanceOf(GivenError);
          return;
        }
        solved++;
        for (const v of [at.impedance, at.horizontal, at.vertical]) expect(Number.isFinite(C.abs(v))).toBe(true);
        expect(at.impedance.re).toBeGreaterThan(0);
        expect(at.lossResistance).toBeGreaterThanOrEqual(0);
        expect(at.lossResistance).toBeLessThan(at.impedance.re * (1 + 1e-3));
      },
    ),
    { numRuns: 40, seed: 7 },
  );
  expect(solved).toBeGreaterThan(20);
});
