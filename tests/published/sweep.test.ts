import { readdirSync } from 'node:fs';
import { afterAll, describe, expect, test } from 'vitest';
import { note, writeAccuracy } from './accuracy.ts';
import { type Claim, type LeftOut, type ReferenceFile, reference } from './claim.ts';

const files: readonly ReferenceFile[] = ['antennas', 'coils', 'detect-hear'];
const modules = await Promise.all(
  readdirSync(new URL('.', import.meta.url))
    .filter((f) => f.endsWith('.claims.ts'))
    .sort()
    .map((f) => import(new URL(f, import.meta.url).href) as Promise<{ claims: readonly Claim[]; leftOut: readonly LeftOut[] }>),
);
const claims = modules.flatMap((m) => m.claims);
const leftOut = modules.flatMap((m) => m.leftOut);
afterAll(writeAccuracy);

for (const file of files)
  describe(`reference/${file}.json`, () => {
    const entries = reference(file);
    const mine = claims.filter((c) => c.file === file);
    const out = leftOut.filter((l) => l.file === file);

    test('no record is silently dropped', () => {
      const dropped = entries.filter((e) => !mine.some((c) => c.ids.test(e.id)) && !out.some((l) => l.ids.test(e.id)));
      expect(dropped.map((e) => e.id)).toEqual([]);
    });
    test('no record is both checked and left out', () => {
      const both = entries.filter((e) => mine.some((c) => c.ids.test(e.id)) && out.some((l) => l.ids.test(e.id)));
      expect(both.map((e) => e.id)).toEqual([]);
    });
    test('every claim and every exception meets a record', () => {
      const idle = [...mine, ...out].filter((c) => !entries.some((e) => c.ids.test(e.id)));
      expect(idle.map((c) => String(c.ids))).toEqual([]);
    });
    for (const claim of mine)
      test(`published: ${claim.figure} (${claim.ids})`, () => {
        for (const entry of entries.filter((e) => claim.ids.test(e.id))) {
          const comparisons = claim.check(entry);
          expect(comparisons.length, `${entry.id} compares nothing`).toBeGreaterThan(0);
          for (const r of comparisons) {
            const allowed = Math.max(r.tolerance.abs ?? 0, (r.tolerance.rel ?? 0) * Math.abs(r.expected));
            expect(
              Math.abs(r.got - r.expected),
              `${entry.id}, ${r.what}: got ${r.got}, published ${r.expected} (${entry.source})`,
            ).toBeLessThanOrEqual(allowed);
          }
          note(claim, comparisons);
        }
      });
  });
