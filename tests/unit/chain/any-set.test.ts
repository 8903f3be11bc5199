import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  assemble,
  chainFigures,
  type Figure,
  GivenError,
  hearingFigures,
  type Place,
  reportStation,
  standAt,
  type TankModel,
  tuningRange,
} from '#engine';
import { arbitrarySetFile } from '../set-file/arbitrary.ts';

/** Every number of a figure must be one; null is a physical no. */
function sound(f: Figure): void {
  expect(f.value === null || Number.isFinite(f.value), `${f.name} = ${f.value}`).toBe(true);
  for (const t of f.working.terms) expect(t.value === null || Number.isFinite(t.value), `${f.name}: ${t.symbol} = ${t.value}`).toBe(true);
}

/** The place with its first station moved into the middle of the tank's dial: most random stations lie beyond a random dial. */
function withinReach(place: Place, tank: TankModel): Place {
  const { lowest, highest } = tuningRange(tank);
  const frequency = Math.min(9e8, Math.max(1.1e5, Math.sqrt((lowest ?? 1e8) * (highest ?? 1e8))));
  const [first, ...rest] = place.stations;
  const moved =
    frequency < 30e6
      ? { ...first!, frequency, polarisation: 'vertical' as const, modulation: { kind: 'am' as const, depth: 0.8 } }
      : { ...first!, frequency, modulation: { kind: 'fm' as const, deviation: 75e3, preEmphasis: 50e-6, stereo: true } };
  return { ...place, method: 'auto', stations: [moved, ...rest] };
}

test('any valid set at any valid place: no NaN, no throw, no negative power', () => {
  let whole = 0;
  let heard = 0;
  fc.assert(
    fc.property(arbitrarySetFile, (file) => {
      if (!file.place) return;
      const { aerial, tank, detector, phones, ear, programme } = file;
      let reception: ReturnType<typeof standAt>;
      try {
        const receiver = assemble({ aerial, tank, detector, phones }, { ear, programme });
        reception = standAt(withinReach(file.place, receiver.tank), receiver);
      } catch (e) {
        // what the engine refuses by itself must say why and how to mend it
        expect(e, String(e)).toBeInstanceOf(GivenError);
        return;
      }
      reception.signals.forEach((_, k) => {
        const r = reportStation(reception, k);
        whole++;
        expect(r.verdict.odds).toBeGreaterThanOrEqual(0);
        expect(r.verdict.odds).toBeLessThanOrEqual(1);
        for (const f of chainFigures(r)) sound(f);
        if (!r.heard) return;
        heard++;
        for (const { figure } of r.heard.ladder) sound(figure);
        for (const f of hearingFigures(r.heard.evaluation.hearing)) sound(f);
        const { available, intoTank, intoDetector, parts } = r.heard.budget;
        // what rounding leaves of a power, against what flows
        const least = -1e-9 * (available + Math.abs(intoTank));
        for (const p of [available, intoTank, intoDetector, ...parts.map((x) => x.watts)]) expect(p).toBeGreaterThanOrEqual(least);
      });
    }),
    { numRuns: 40, seed: 20261125 },
  );
  expect(whole).toBeGreaterThan(30);
  expect(heard).toBeGreaterThan(5);
}, 120_000);
