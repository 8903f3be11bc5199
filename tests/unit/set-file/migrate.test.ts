import { describe, expect, test } from 'vitest';
import { CHAIN, type MigrationChain } from '../../../src/set-file/migrate.ts';
import { readSetFile } from '../../../src/set-file/read-set-file.ts';
import { base, placeOf } from './base.ts';

/** Two steps such as later versions may need: a key renamed, a section moved. */
const chain: MigrationChain = {
  current: 3,
  migrations: [
    {
      from: 1,
      apply: (d) => {
        const { earpiece, ...rest } = d;
        return { ...rest, phones: { earpiece } };
      },
    },
    {
      from: 2,
      apply: (d) => {
        const tank = d.tank as Record<string, unknown>;
        tank.strayCapacitance = tank.strays;
        delete tank.strays;
        return d;
      },
    },
  ],
};

/** The base file as those older versions would have had it. */
function older(version: number) {
  const draft = { ...base(), version };
  if (version < 3) draft.tank.strays = '2 pF';
  if (version < 2) {
    draft.earpiece = draft.phones.earpiece;
    delete draft.phones;
  }
  return draft;
}

describe('versions', () => {
  test('the first needs no step', () => expect(CHAIN).toEqual({ current: 1, migrations: [] }));

  for (const version of [1, 2])
    test(`version ${version} goes all the way to 3`, () => {
      const read = readSetFile(JSON.stringify(older(version)), {}, chain);
      if (!read.ok) throw new Error(JSON.stringify(read.problems));
      expect(read.value.tank.strayCapacitance).toBe(2e-12);
      expect(read.value.phones.earpiece.kind).toBe('piezo');
    });

  test('what was moved still knows its line', () => {
    const draft = older(1);
    draft.earpiece.capacitance = '15 nH';
    const text = JSON.stringify(draft, null, 2);
    const read = readSetFile(text, {}, chain);
    expect(read).toMatchObject({ ok: false, problems: [{ path: 'phones.earpiece.capacitance', ...placeOf(text, '"15 nH"') }] });
  });

  test('other files are brought up too, each from its own version', () => {
    const { place, ...set } = older(1);
    const read = readSetFile(
      JSON.stringify({ ...set, place: { file: 'x' } }),
      { read: () => JSON.stringify({ version: 2, tank: {}, place }) },
      chain,
    );
    expect(read.ok).toBe(true);
  });

  test('a version to come, and a gap in the chain', () => {
    expect(readSetFile(JSON.stringify({ ...base(), version: 4 }), {}, chain)).toMatchObject({
      ok: false,
      problems: [{ path: 'version', given: '4', why: 'the newest version known here is 3' }],
    });
    expect(readSetFile(JSON.stringify(base()), {}, { current: 3, migrations: chain.migrations.slice(1) })).toMatchObject({
      ok: false,
      problems: [{ path: 'version', given: '1', why: 'no way is known from version 1 to 2' }],
    });
  });
});
