import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readSetFile, type SetFile, writeSetFile } from '#set-file';
import { arbitrarySetFile } from './arbitrary.ts';

test('round trip: reading what was written gives back every bit', () => {
  fc.assert(
    fc.property(arbitrarySetFile, (set) => {
      const text = writeSetFile(set);
      const read = readSetFile(text);
      if (!read.ok) throw new Error(JSON.stringify(read.problems, null, 1));
      expect(read.value).toStrictEqual(set);
      expect(writeSetFile(read.value)).toBe(text);
    }),
    { numRuns: 150 },
  );
});

test('the random sets hold every kind of every stage', () => {
  const seen = new Set<string>();
  const note = (stage: string, kind: string | undefined) => seen.add(`${stage} ${kind}`);
  for (const set of fc.sample(arbitrarySetFile, { numRuns: 250, seed: 1 }) as SetFile[]) {
    note('aerial', set.aerial.kind);
    if (set.aerial.kind === 'whip') note('counterpoise', set.aerial.counterpoise.kind);
    if (set.aerial.kind === 'wires') {
      note('wires', set.aerial.shape.kind);
      note('ground', set.aerial.ground.kind);
      if (set.aerial.shape.kind === 'rod') note('rod against', set.aerial.shape.against.kind);
    }
    note('coil', set.tank.coil.kind);
    note('law', set.tank.capacitor.law.kind);
    note('aerial coupling', set.tank.aerialCoupling?.kind);
    note('detector coupling', set.tank.detectorCoupling.kind);
    note('detector', set.detector.kind);
    note('earpiece', set.phones.earpiece.kind);
    note('transformer', set.phones.transformer ? 'yes' : 'no');
    note('room', set.ear.room.kind);
    note('place', set.place ? 'yes' : 'no');
    for (const s of set.place?.stations ?? []) {
      note('modulation', s.modulation.kind);
      note('position', Object.keys(s.position)[0]);
      note('terrain', s.terrain ? 'yes' : 'no');
    }
  }
  expect(seen).toEqual(
    new Set([
      ...['electrical', 'dipole', 'whip', 'loop', 'wire-to-earth', 'coil', 'wires'].map((k) => `aerial ${k}`),
      ...['rod', 'dipole', 'folded-dipole', 'beam', 'round-loop', 'square-loop', 'free-list'].map((k) => `wires ${k}`),
      ...['free-space', 'perfect', 'real'].map((k) => `ground ${k}`),
      ...['drop-wire', 'box', 'radials', 'earth-wire'].map((k) => `rod against ${k}`),
      ...['plane', 'drop-wire', 'set', 'earth-wire'].map((k) => `counterpoise ${k}`),
      ...['geometry', 'electrical'].map((k) => `coil ${k}`),
      ...['capacitance-linear', 'wavelength-linear', 'frequency-linear', 'logarithmic', 'table'].map((k) => `law ${k}`),
      ...['direct', 'tap', 'link', 'series-capacitor', 'undefined'].map((k) => `aerial coupling ${k}`),
      ...['direct', 'tap', 'link', 'series-capacitor'].map((k) => `detector coupling ${k}`),
      ...['junction', 'channel', 'table'].map((k) => `detector ${k}`),
      ...['piezo', 'magnetic'].map((k) => `earpiece ${k}`),
      ...['noise-criterion', 'a-weighted', 'bands'].map((k) => `room ${k}`),
      ...['fm', 'am'].map((k) => `modulation ${k}`),
      ...['distance', 'coordinates'].map((k) => `position ${k}`),
      ...['place', 'transformer', 'terrain'].flatMap((w) => [`${w} yes`, `${w} no`]),
    ]),
  );
});

test('what no set file can hold is not written', () => {
  const [set] = fc.sample(arbitrarySetFile, { numRuns: 1, seed: 2 }) as [SetFile];
  expect(() => writeSetFile({ ...set, programme: { tone: Number.NaN, level: 0 } })).toThrow();
});
