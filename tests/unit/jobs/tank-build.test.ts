import { afterAll, expect, test } from 'vitest';
import { assemble, reportStation, standAt } from '#engine';
import { example } from '../find/examples.ts';
import { bench, document, ok } from './examples.ts';

const jobs = bench();
afterAll(() => jobs.close());
const DEMO = 'dipole-and-small-coil.json';

test('the dial to be drawn is that of the whole set: read where a station resonates it shows its carrier, to a tenth of a degree', async () => {
  const { place, set, listener } = example(DEMO);
  const reception = standAt(place, assemble(set, listener));
  const { tank, dial } = ok(await jobs.call('tankBuild', { document: document(DEMO) }));
  expect(tank.coil.kind).toBe('geometry');
  expect(dial.stations.map((s) => s.label)).toEqual(place.stations.map((s) => s.name));
  for (const [k, station] of dial.stations.entries()) {
    // found the other way round: the angle at which the carrier resonates
    const best = reportStation(reception, k).dial;
    if ('missing' in best) continue;
    const i = dial.points.findIndex((p) => p.angle > best.resonance.angle);
    const [a, b] = [dial.points[i - 1]!, dial.points[i]!];
    const along = (best.resonance.angle - a.angle) / (b.angle - a.angle);
    const read = a.frequency! + along * (b.frequency! - a.frequency!);
    const perDegree = Math.abs(b.frequency! - a.frequency!) / (((b.angle - a.angle) * 180) / Math.PI);
    expect(Math.abs(read - station.frequency) / perDegree).toBeLessThan(0.1);
    expect(station.points.length).toBeGreaterThan(0);
  }
});
