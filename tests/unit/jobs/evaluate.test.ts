import { afterAll, describe, expect, test } from 'vitest';
import { assemble, bestDial, evaluate, reportStation, standAt } from '#engine';
import { improvements } from '#find';
import { LIBRARY, mergeParts } from '#parts';
import { Cancelled } from '#rpc';
import { shelfOf } from '#set-file';
import { ladderRows, stationFigures } from '#tell';
import { example } from '../find/examples.ts';
import { bench, document, ok } from './examples.ts';

const jobs = bench();
afterAll(() => jobs.close());
const DEMO = 'dipole-and-small-coil.json';
const demo = document(DEMO);
/** the same by way of the engine alone */
const { place, set, listener } = example(DEMO);
const reception = standAt(place, assemble(set, listener));

describe('a document, from mast to ear', () => {
  test('outline: what it is, its stations, the ends of its dial', async () => {
    const o = ok(await jobs.call('outline', demo));
    expect(o.name).toBe('Dipole and small coil');
    expect(o.stations.map((s) => s.name)).toEqual(place.stations.map((s) => s.name));
    expect(o.stations.map((s) => s.field)).toEqual(reception.signals.map((s) => s.received.field));
    expect(o.dial.rotation).toBe(reception.receiver.tank.rotation);
    expect(o.dial.lowest!).toBeLessThan(o.dial.highest!);
    expect(o.parts.map((p) => p.path)).toContain('detector');
  });

  test('all stations: the very figures of the engine, with their workings', async () => {
    const told: number[] = [];
    const { stations, cautions } = ok(await jobs.call('evaluate', { document: demo }, { onProgress: (f) => told.push(f) }));
    const figured = ok(await jobs.call('figures', { document: demo }));
    stations.forEach((s, k) => {
      const report = reportStation(reception, k);
      expect(s.index).toBe(k);
      expect(figured[k]).toEqual({ ...s, figures: stationFigures(report) });
      expect(s.verdict).toEqual(report.verdict);
      expect(s.ladder).toMatchObject(ladderRows(report));
      expect(s.ladder.map((l) => l.decibels)).toEqual((report.heard?.ladder ?? []).map((r) => r.cost));
      expect(s.sentence).toContain(s.name);
    });
    expect(cautions.join()).toContain('overhead lines');
    expect(told.every((f) => f >= 0 && f <= 1)).toBe(true);
  });

  test('one station: that one alone; one that is not there is the fault of the caller', async () => {
    const { stations } = ok(await jobs.call('evaluate', { document: demo, station: 1 }));
    expect(stations.map((s) => s.name)).toEqual([place.stations[1]!.name]);
    await expect(jobs.call('evaluate', { document: demo, station: 99 })).rejects.toThrow('no station 99');
  });

  test('the dial moved: figures at that angle; softer on the station itself than on its flank, as a slope detector must be', async () => {
    const dial = bestDial(reception, 0);
    if ('missing' in dial) throw new Error('the demo reaches its first station');
    const at = async (angle: number) => ok(await jobs.call('figures', { document: demo, station: 0, angle }))[0]!;
    const best = await at(dial.points[0]!.angle);
    const top = await at(dial.resonance.angle);
    expect(best.angle).toBe(dial.points[0]!.angle);
    expect(best.x).toBeCloseTo(dial.points[0]!.x, 6);
    expect(top.x).toBeCloseTo(0, 9);
    const audio = (s: typeof best) => s.figures.find((f) => f.name === 'ladder.intoPhones' || f.name === 'ladder.audioAvailable')!.value!;
    expect(audio(top)).toBeLessThan(audio(best) / 10);
    expect(top.verdict.sii).toBe(evaluate(reception, 0, dial.resonance.angle).hearing.sii);
    expect(top.dial).toEqual(dial);
  });

  test('what is out of reach is a result, not a problem', async () => {
    const text = demo.text.replace('"turns": 5,', '"turns": 9,');
    const { stations } = ok(await jobs.call('evaluate', { document: { ...demo, text }, angle: 1 }));
    const out = stations.find((s) => s.verdict.outcome === 'out-of-reach')!;
    expect(out).toMatchObject({ angle: null, x: null, ladder: [] });
    expect(out.sentence).toContain('out of reach');
  });
});

describe('documents that cannot be used', () => {
  const problems = async (text: string, files: Record<string, string> = { ...demo.files }) => {
    const answer = await jobs.call('evaluate', { document: { text, files } });
    if (answer.ok) throw new Error('it was taken');
    return answer.problems;
  };

  test('each problem with its place, reason and mend', async () => {
    const [p] = await problems(demo.text.replace('"turns": 5,', '"turns": -5,'));
    expect(p).toMatchObject({ path: 'tank.coil.turns', file: null, line: 15 });
    expect(p!.why).not.toBe('');
    expect(p!.mend).not.toBe('');
    expect(await problems('{')).toHaveLength(1);
    expect(await problems('')).toHaveLength(1);
  });

  test('what only the engine sees has its line too', async () => {
    const beam = document('beam-from-its-elements.json');
    const text = beam.text.replace('"kind": "wires",', '"kind": "wires",\n    "segments": 2,');
    const answer = await jobs.call('evaluate', { document: { ...beam, text } });
    if (answer.ok) throw new Error('it was taken');
    const line = text.split('\n').findIndex((l) => l.includes('"segments"')) + 1;
    expect(answer.problems).toMatchObject([{ path: 'aerial.segments', file: null, line }]);
    expect(answer.problems[0]!.mend).not.toBe('');
  });

  test('a file that was not handed in, be its name as it may', async () => {
    const [p] = await problems(demo.text, {});
    expect(p).toMatchObject({ path: 'place.file', line: 5 });
    expect(p!.why).toContain('not handed in');
    const [q] = await problems(demo.text.replace('fenmarket.json', '__proto__'));
    expect(q!.why).toContain('not handed in');
  });

  test('a set without a place', async () => {
    const [p] = await problems(demo.text.replace('"place": { "file": "fenmarket.json" },', ''));
    expect(p).toMatchObject({ path: 'place', given: 'left out' });
  });
});

describe('advice', () => {
  test('what the search finds, best first, the best of it in the sentence', async () => {
    const told: number[] = [];
    const advised = ok(await jobs.call('advise', { document: demo, station: 0 }, { onProgress: (f) => told.push(f) }));
    const found = improvements({ place, set, listener }, 0, shelfOf(mergeParts(LIBRARY)));
    expect(advised.all.map((a) => [a.key, a.gain])).toEqual(found.map((i) => [i.change.key, i.gain]));
    expect(advised.sentence).toContain(found[0]!.change.words);
    expect(new Set(advised.bestByStage.map((a) => a.key.split('.')[0])).size).toBe(advised.bestByStage.length);
    expect(told.length).toBeGreaterThan(3);
    expect(told).toEqual(told.toSorted((a, b) => a - b));
  });

  test('cancelled in the middle, and evaluated while it runs', async () => {
    const stop = new AbortController();
    let advised = false;
    const advice = jobs.call('advise', { document: demo, station: 1 }, { signal: stop.signal }).finally(() => {
      advised = true;
    });
    const { stations } = ok(await jobs.call('evaluate', { document: demo, station: 1 }));
    expect(stations).toHaveLength(1);
    expect(advised).toBe(false);
    stop.abort();
    await expect(advice).rejects.toBeInstanceOf(Cancelled);
  });
});

describe('figures of a stage', () => {
  test.each(['place', 'aerial', 'tank', 'detector', 'phones', 'ear'] as const)('%s: groups of figures with workings', async (stage) => {
    const groups = ok(await jobs.call('stage', { document: demo, stage, station: 0 }));
    const figures = groups.flatMap((g) => g.figures);
    expect(figures.length).toBeGreaterThan(3);
    for (const f of figures) {
      expect(f.working.formula).not.toBe('');
      expect(f.value === null || Number.isFinite(f.value)).toBe(true);
    }
  });

  test('an aerial of wires keeps what it has solved while the rest of the set is changed', async () => {
    const beam = document('beam-from-its-elements.json');
    const first = ok(await jobs.call('figures', { document: beam, station: 0 }));
    const text = beam.text.replace(/"name": "[^"]*"/, '"name": "Another name"');
    const began = performance.now();
    const second = ok(await jobs.call('outline', { ...beam, text }));
    expect(second.name).toBe('Another name');
    // reading and one look at the aerial: solving its wires anew takes some 50 ms and more
    expect(performance.now() - began).toBeLessThan(1000);
    expect(first[0]!.figures.find((f) => f.name === 'ladder.emf')!.value).toBeGreaterThan(0);
  });
});
