import { expect, test } from 'vitest';
import { assemble, designBeam, reportStation, type StationReport, shareFigures, standAt, wireAerial, wireParts, wireShares } from '#engine';
import { type Example, example, type Wires } from '../find/examples.ts';

/** The rod's example at its upright station, with other aerials in place of its own. */
const ROD = 'rod-and-drop-wire.json';
const rod = { kind: 'wires', shape: 'rod', length: '70 cm' };
const heard = (e: Example): StationReport => {
  const k = e.place.stations.findIndex((s) => s.name === 'Lantern');
  return reportStation(standAt(e.place, assemble(e.set, e.listener)), k);
};
const rung = (r: StationReport, name: string): number => r.heard!.ladder.find((l) => l.figure.name === `ladder.${name}`)!.figure.value!;
const against = (counterpart: unknown): Example => example(ROD, { ...rod, against: counterpart });

const alone = heard(against({ kind: 'box', width: '15 cm', depth: '5 cm', height: '10 cm' }));
const dropped = heard(example(ROD));

test('practice: from mast to ear a drop wire beats the rod alone, and a beam of 1.7 m beats both (common practice, no source)', () => {
  const base = example(ROD);
  const { best } = designBeam({
    frequency: 101.7e6,
    boom: 1.7,
    elements: 4,
    diameter: 8e-3,
    metal: 'aluminium',
    polarisation: 'vertical',
    bearing: (305 * Math.PI) / 180,
    driven: { kind: 'straight' },
    goal: { kind: 'impedance', resistance: 75, reactance: 0 },
  });
  const beam = heard({
    ...base,
    set: { ...base.set, aerial: { kind: 'wires', shape: best.shape, height: 8, ground: { kind: 'free-space' } } },
  });
  expect(rung(dropped, 'soundLevel')).toBeGreaterThan(rung(alone, 'soundLevel') + 6);
  expect(rung(beam, 'soundLevel')).toBeGreaterThan(rung(dropped, 'soundLevel') + 6);
  expect(rung(beam, 'sii')).toBeGreaterThan(rung(dropped, 'sii'));
  expect(rung(beam, 'available')).toBeGreaterThan(3 * rung(dropped, 'available'));
});

test('practice: a wire to earth does not help a rod at VHF (common practice, no source), and the shares of the wires say why', () => {
  for (const length of [8, 9, 10]) {
    const set = against({ kind: 'earth-wire', length: `${length} m` });
    const earthed = heard(set);
    // far less than the drop wire brings, and less power than from the rod on the set alone
    expect(rung(earthed, 'soundLevel'), `${length} m`).toBeLessThan(rung(dropped, 'soundLevel') - 10);
    expect(rung(earthed, 'available'), `${length} m`).toBeLessThan(rung(alone, 'available') / 3);
    const { received, arrival } = earthed.signal;
    const aerial = wireAerial(set.set.aerial as Wires);
    const { discretised, solution } = aerial.solved(101.7e6);
    const shares = wireShares(discretised, solution, arrival);
    const [own, wire] = shareFigures(shares, wireParts((set.set.aerial as Wires).shape), received);
    expect([own!.part, wire!.part]).toEqual(['rod', 'wire to earth']);
    const value = (p: typeof own, name: string) => p!.figures.find((f) => f.name === `share.${name}`)!.value!;
    // metre for metre the wire hears less than half as much as the rod: its current turns over ...
    expect(value(wire, 'effectiveLength') / length, `${length} m`).toBeLessThan(value(own, 'effectiveLength') / 0.7 / 2);
    // ... and much of the resistance is that of the earth
    const { re } = aerial.at(101.7e6, arrival).impedance;
    expect(value(wire, 'lossResistance') / re, `${length} m`).toBeGreaterThan(0.3);
  }
});

test('practice: ten millimetres of rod are heard, a little: smoothly, and best somewhere near resonance (common practice, no source)', () => {
  const lengths = Array.from({ length: 11 }, (_, k) => 660 + 10 * k);
  const levels = lengths.map((mm) =>
    rung(heard(example(ROD, { ...rod, length: `${mm} mm`, against: { kind: 'drop-wire', length: '70 cm' } })), 'soundLevel'),
  );
  for (let k = 1; k < levels.length; k++) {
    const step = Math.abs(levels[k]! - levels[k - 1]!);
    expect(step).toBeGreaterThan(1e-4);
    expect(step).toBeLessThan(0.34);
  }
  const best = levels.indexOf(Math.max(...levels));
  expect(best).toBeGreaterThan(0);
  expect(best).toBeLessThan(levels.length - 1);
});
