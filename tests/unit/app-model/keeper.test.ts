import { describe, expect, test } from 'vitest';
import { Keeper, type Keeping, keepingWords, type Storage, type TabLine } from '../../../src/app/model/keeper.ts';
import { APART, type KeptRecord, MOST_VERSIONS } from '../../../src/app/model/kept-record.ts';

/** A browser's database as tabs share it: one write after another, values copied; it can be made to fail. */
class Disk implements Storage {
  held: unknown;
  fail: ((record: KeptRecord) => string | null) | null = null;
  writes = 0;
  async read(): Promise<unknown> {
    if (this.fail?.({ versions: [] } as unknown as KeptRecord) === 'SecurityError') throw new DOMException('no', 'SecurityError');
    return structuredClone(this.held);
  }
  async update(next: (before: unknown) => KeptRecord): Promise<void> {
    await Promise.resolve();
    const record = next(structuredClone(this.held));
    const failure = this.fail?.(record);
    if (failure) throw new DOMException('not written', failure);
    this.writes++;
    this.held = structuredClone(record);
  }
}

class Tabs {
  readonly handlers: ((revision: number) => void)[] = [];
  line(): TabLine {
    let mine: ((revision: number) => void) | null = null;
    return {
      post: (revision) => {
        for (const h of this.handlers) if (h !== mine) h(revision);
      },
      onMessage: (h) => {
        mine = h;
        this.handlers.push(h);
      },
    };
  }
}

function tab(disk: Disk, tabs = new Tabs(), clock = { now: 1e12 }) {
  const told: Keeping[] = [];
  const keeper = new Keeper(
    disk,
    tabs.line(),
    () => clock.now,
    (k) => told.push(k),
  );
  return { keeper, told, clock, last: () => told.at(-1)! };
}
const work = (turns: number) => ({ document: { tank: { turns } }, files: {} });
const held = (disk: Disk) => disk.held as KeptRecord;

describe('work is kept', () => {
  test('saved, and there again at the next visit', async () => {
    const disk = new Disk();
    const a = tab(disk);
    expect(await a.keeper.open(() => {})).toBeNull();
    await a.keeper.save({ document: { n: 1 }, files: { 'town.json': '{}' } });
    expect(a.last()).toEqual({ kind: 'kept', at: 1e12 });
    const b = tab(disk);
    expect(await b.keeper.open(() => {})).toMatchObject({ document: { n: 1 }, files: { 'town.json': '{}' }, versions: [] });
    await b.keeper.save(work(2));
    expect(held(disk)).toMatchObject({ revision: 2, document: { tank: { turns: 2 } } });
  });

  test('of many saves at once the first and the last are made', async () => {
    const disk = new Disk();
    const { keeper } = tab(disk);
    await keeper.open(() => {});
    await Promise.all(Array.from({ length: 50 }, (_, n) => keeper.save(work(n))));
    expect(disk.writes).toBe(2);
    expect(held(disk).document).toEqual(work(49).document);
  });

  test('earlier versions, no closer together than they need be, and not without end', async () => {
    const disk = new Disk();
    const { keeper, clock } = tab(disk);
    await keeper.open(() => {});
    for (const n of [1, 2, 3]) {
      await keeper.save(work(n));
      clock.now += 1000;
    }
    // 1 is kept as the first version; 2 followed within a second
    expect(held(disk).versions.map((v) => v.document)).toEqual([work(1).document]);
    for (let n = 4; n < 100; n++) {
      clock.now += APART;
      await keeper.save(work(n));
    }
    expect(held(disk).versions).toHaveLength(MOST_VERSIONS);
    expect(held(disk).versions[0]!.document).toEqual(work(98).document);
    const before = disk.held;
    clock.now += APART;
    await keeper.save(work(99));
    expect(held(disk).versions).toEqual((before as KeptRecord).versions);
  });
});

describe('two tabs', () => {
  async function both() {
    const [disk, tabs] = [new Disk(), new Tabs()];
    const [a, b] = [tab(disk, tabs), tab(disk, tabs)];
    const newer: string[] = [];
    await a.keeper.open(() => newer.push('a'));
    await a.keeper.save(work(1));
    await b.keeper.open(() => newer.push('b'));
    return { disk, a, b, newer };
  }

  test('the other tab hears of a save, and can take it', async () => {
    const { a, b, newer } = await both();
    await a.keeper.save(work(2));
    expect(newer).toEqual(['b']);
    expect(await b.keeper.takeTheirs()).toEqual(work(2));
    await b.keeper.save(work(3));
    expect(b.last().kind).toBe('kept');
  });

  test('never written over unasked: the later tab is told, and nothing changes until the person has chosen', async () => {
    const { disk, a, b } = await both();
    await a.keeper.save(work(2));
    await b.keeper.save(work(30));
    expect(b.last()).toMatchObject({ kind: 'conflict', theirs: { document: work(2).document } });
    expect(keepingWords(b.last())).toContain('another tab');
    await b.keeper.save(work(31));
    expect(held(disk).document).toEqual(work(2).document);
    await b.keeper.keepMine(work(31));
    expect(b.last().kind).toBe('kept');
    expect(held(disk).document).toEqual(work(31).document);
    // what the other tab had is not lost
    expect(held(disk).versions.map((v) => v.document)).toContainEqual(work(2).document);
    await a.keeper.save(work(4));
    expect(a.last().kind).toBe('conflict');
    expect(await a.keeper.takeTheirs()).toEqual(work(31));
    await a.keeper.save(work(5));
    expect(held(disk).document).toEqual(work(5).document);
  });

  test('both at the same moment: one is saved, the other told', async () => {
    const { disk, a, b } = await both();
    await Promise.all([a.keeper.save(work(2)), b.keeper.save(work(3))]);
    expect([a.last().kind, b.last().kind].sort()).toEqual(['conflict', 'kept']);
    expect(held(disk).revision).toBe(2);
  });
});

describe('a browser that does not keep it', () => {
  test('full: earlier versions are given up first, then the person is told; the next save is tried again', async () => {
    const disk = new Disk();
    const { keeper, clock, last } = tab(disk);
    await keeper.open(() => {});
    for (let n = 0; n < 6; n++) {
      await keeper.save(work(n));
      clock.now += APART;
    }
    disk.fail = (r) => (r.versions.length > 2 ? 'QuotaExceededError' : null);
    await keeper.save(work(7));
    expect(last().kind).toBe('kept');
    expect(held(disk).versions.length).toBeLessThanOrEqual(3);
    disk.fail = () => 'QuotaExceededError';
    await keeper.save(work(8));
    expect(last()).toEqual({ kind: 'memory', why: 'full' });
    expect(keepingWords(last())).toMatch(/no room.*Save it as a file/);
    disk.fail = null;
    await keeper.save(work(9));
    expect(last().kind).toBe('kept');
    expect(held(disk).document).toEqual(work(9).document);
  });

  test('refused, as in a private window: told at the start, work goes on', async () => {
    const disk = new Disk();
    disk.fail = () => 'SecurityError';
    const { keeper, last } = tab(disk);
    expect(await keeper.open(() => {})).toBeNull();
    expect(last()).toEqual({ kind: 'memory', why: 'refused' });
    await keeper.save(work(1));
    expect(last()).toEqual({ kind: 'memory', why: 'refused' });
    expect(await keeper.takeTheirs()).toBeNull();
  });

  test('what another release has written is left alone', async () => {
    for (const foreign of [{ form: 2, revision: 9 }, 'text', { form: 1, revision: 'x', at: 1, versions: [], files: {} }]) {
      const disk = new Disk();
      disk.held = foreign;
      const { keeper, last } = tab(disk);
      expect(await keeper.open(() => {})).toBeNull();
      await keeper.save(work(1));
      expect(last()).toEqual({ kind: 'memory', why: 'foreign' });
      expect(disk.held).toEqual(foreign);
    }
  });
});
