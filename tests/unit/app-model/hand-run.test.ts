import { afterAll, describe, expect, test } from 'vitest';
import type { JobTable } from '#jobs';
import { type Client, WorkerDied } from '#rpc';
import { HandRun } from '../../../src/app/model/tolerance/hand-run.ts';
import { bench, document } from '../jobs/examples.ts';

const SET = document('dipole-and-small-coil.json');
const client = bench();
afterAll(() => client.close());

/** A thread that dies over some of its calls. */
const mortal = (dies: (call: number, job: string) => boolean): Client<JobTable> => {
  let calls = 0;
  return {
    call: (job, given, options) =>
      dies(calls++, job) ? Promise.reject(new WorkerDied('as a test would have it')) : client.call(job, given, options),
    close: () => {},
  };
};
const begun = async (run: HandRun, first: number): Promise<HandRun> => {
  await run.begin(first);
  return run;
};

describe('a set that is built over and over', () => {
  test('more are built on request, each kept; the same seed builds the same however it was cut up', async () => {
    const run = await begun(new HandRun(client, SET, 0, 3), 24);
    expect(run.running.value).toBe(false);
    expect(run.built.value).toHaveLength(24);
    await run.more();
    expect(run.built.value).toHaveLength(48);
    expect(run.known.value!.samples).toBe(48);
    const whole = await begun(new HandRun(bench(), SET, 0, 3), 48);
    expect(run.built.value).toEqual(whole.built.value);
    expect(run.known.value!.lines).toEqual(whole.known.value!.lines);
    // what is told of all is counted anew from the sets themselves
    const heard = run.built.value.filter((b) => b.outcome !== 'silent').length / 48;
    expect(run.known.value!.heard.value).toBeCloseTo(heard, 12);
    const places = run.built.value.flatMap((b) => (b.place === null ? [] : [b.place])).sort((a, b) => a - b);
    const [low, , high] = run.known.value!.spread.place!;
    expect(places.filter((p) => p < low).length / places.length).toBeCloseTo(0.1, 1);
    expect(places.filter((p) => p > high).length / places.length).toBeCloseTo(0.1, 1);
  });

  test('stopped, it keeps what it has and can go on', async () => {
    const run = new HandRun(client, SET, null, 4);
    const end = run.begin(4000);
    while (run.built.value.length === 0) await new Promise((done) => setTimeout(done, 5));
    run.stop();
    await end;
    const stopped = run.built.value.length;
    expect(stopped).toBeLessThan(4000);
    expect(run.further).toBe(stopped);
    expect(run.plan.value).toMatchObject({ name: 'Fen Talk', meant: { off: 0 } });
    run.close();
  });

  test('a thread that dies is asked anew; one that always dies is told', async () => {
    const run = await begun(
      new HandRun(
        mortal((k) => k % 2 === 0),
        SET,
        0,
        5,
      ),
      16,
    );
    expect(run.built.value).toHaveLength(16);
    expect(run.fault.value).toBeNull();
    const lost = await begun(
      new HandRun(
        mortal((_, job) => job === 'toleranceSlice'),
        SET,
        0,
        5,
      ),
      16,
    );
    expect(lost.running.value).toBe(false);
    expect(lost.fault.value).toContain('the worker ended');
  });

  test('a file that cannot be read, and a place without stations, are told', async () => {
    const broken = await begun(new HandRun(client, { ...SET, text: SET.text.replace('"tank"', '"tonk"') }, null, 1), 16);
    expect(broken.problems.value.length).toBeGreaterThan(0);
    expect(broken.running.value).toBe(false);
    const town = JSON.parse(SET.files!['fenmarket.json']!) as { place: { stations: unknown[] } };
    const empty = { ...SET, files: { 'fenmarket.json': JSON.stringify({ ...town, place: { ...town.place, stations: [] } }) } };
    const silent = await begun(new HandRun(client, empty, null, 1), 16);
    expect(silent.problems.value).toMatchObject([{ path: 'place.stations' }]);
    expect(silent.built.value).toHaveLength(0);
  });

  test('a set whose dial does not reach the station as meant is built all the same', async () => {
    const far = {
      ...SET,
      text: JSON.stringify({ ...JSON.parse(SET.text), tank: { ...JSON.parse(SET.text).tank, strayCapacitance: '200 pF' } }),
    };
    const run = await begun(new HandRun(client, far, 0, 1), 16);
    expect(run.problems.value).toEqual([]);
    expect(run.plan.value!.meant.place).toBeNull();
    expect(run.known.value!.lines.map((l) => l.text)).toContain('nowhere: it is never reached');
  });
});
