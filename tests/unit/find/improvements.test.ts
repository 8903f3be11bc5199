import { describe, expect, test } from 'vitest';
import { assemble, bestDial, evaluate, listeningPoint, type Place, type SetDescription, standAt } from '#engine';
import { type Improvement, improvements, type Shelf } from '#find';
import { listener, mediumWaveCoil, place, set, station } from '../chain/base-set.ts';

const junction = (saturationCurrent: number): SetDescription['detector'] => ({
  kind: 'junction',
  saturationCurrent,
  ideality: 1.05,
  seriesResistance: 20,
  junctionCapacitance: 0.2e-12,
  nominalTemperature: 300,
  temperature: 300,
});
const { earpiece } = set.phones;
const shelf: Shelf = {
  detectors: { weak: junction(1e-9), fit: junction(1e-6) },
  earpieces: {
    piezo: earpiece,
    sensitive: { ...earpiece, name: 'sensitive', sensitivity: earpiece.sensitivity.map((p) => ({ ...p, level: p.level + 6 })) },
    armature: { ...earpiece, name: 'armature', kind: 'magnetic', resistance: 1000, inductance: 0.1 },
  },
  transformers: {
    matching: {
      ratio: 8,
      primaryInductance: 60,
      primaryResistance: 2000,
      secondaryResistance: 40,
      leakageInductance: 0.5,
      coreLoss: 500e3,
      capacitance: 0,
    },
  },
  capacitors: {
    better: { ...set.tank.capacitor, contactResistance: 5e-3 },
    gang: { ...set.tank.capacitor, minimum: 12e-12, maximum: 365e-12 },
  },
};
const find = (s: SetDescription, p: Place = place(), index = 0): readonly Improvement[] =>
  improvements({ place: p, set: s, listener }, index, shelf);
const headroom = (s: SetDescription, p: Place): number => {
  const r = standAt(p, assemble(s, listener));
  const dial = bestDial(r, 0);
  if ('missing' in dial) throw new Error('must tune');
  return Math.max(...listeningPoint(r, 0, dial).evaluation.hearing.headroom);
};
const quiet = place(station({ power: 2e3 }));

describe('changes a builder can make', () => {
  const found = find(set, quiet);
  test('each is named once, helps, and costs no word of what was understood', () => {
    expect(found.length).toBeGreaterThan(5);
    expect(new Set(found.map((i) => i.change.key)).size).toBe(found.length);
    const r = standAt(quiet, assemble(set, listener));
    const dial = bestDial(r, 0);
    if ('missing' in dial) throw new Error('must tune');
    const { sii } = listeningPoint(r, 0, dial).evaluation.hearing;
    for (const i of found) {
      expect(i.gain!, i.change.key).toBeGreaterThanOrEqual(0.1);
      expect(i.sii, i.change.key).toBeGreaterThanOrEqual(sii - 0.006);
    }
    for (let k = 1; k < found.length; k++) expect(found[k]!.gain!).toBeLessThanOrEqual(found[k - 1]!.gain!);
  });
  test('identity: made, a change brings what it promised', () => {
    const before = headroom(set, quiet);
    for (const { change, gain } of found.filter((i) => !i.change.keepsDial && i.change.situation.listener === listener))
      expect(headroom(change.situation.set, change.situation.place) - before, change.key).toBeCloseTo(gain!, 6);
  });
  test('what is to be wound can be wound: wire thinner than the pitch, taps at quarters on the coil, links outside it', () => {
    for (const { change } of found) {
      const { coil, aerialCoupling, detectorCoupling } = change.situation.set.tank;
      if (coil.kind === 'geometry') expect(coil.wireDiameter).toBeLessThan(coil.pitch);
      for (const c of [aerialCoupling, detectorCoupling])
        if (c?.kind === 'tap') {
          expect(c.turns).toBeLessThanOrEqual(coil.turns);
          expect((4 * c.turns) % 1).toBe(0);
        }
    }
  });
  test('a medium-wave gang is not offered for a VHF coil', () => {
    const keys = find({ ...set, tank: { ...set.tank, capacitor: { ...set.tank.capacitor, contactResistance: 0.3 } } }, quiet).map(
      (i) => i.change.key,
    );
    expect(keys).toContain('tank.capacitor.better');
    expect(keys).not.toContain('tank.capacitor.gang');
  });
});

describe('what is plainly wrong is found', () => {
  test('an aerial across the whole coil: loosen it', () => {
    const tight: SetDescription = { ...set, tank: { ...set.tank, aerialCoupling: { kind: 'tap', turns: 3 } } };
    const tank = find(tight, quiet).filter((i) => i.change.key.startsWith('tank.'));
    expect(tank[0]!.change.key).toBe('tank.aerial.looser');
  });
  test('a dipole across the wave: turn it', () => {
    const crossed = place(station({ power: 100e3, polarisation: 'vertical' }));
    const turn = find(set, crossed).find((i) => i.change.key === 'aerial.turn')!;
    expect(turn.gain!).toBeGreaterThan(20);
  });
  test('a station just beyond the dial: capacitance brings it on', () => {
    const low = find(set, place(station({ frequency: 75e6 })));
    const added = low.find((i) => i.change.key === 'tank.parallel')!;
    expect(added.gain).toBeNull();
    expect(added.change.situation.set.tank.capacitor.parallel).toBeGreaterThan(1e-12);
    const r = standAt(added.change.situation.place, assemble(added.change.situation.set, listener));
    expect('missing' in bestDial(r, 0)).toBe(false);
  });
  test('a piezo that would have no way for direct current gets a resistor', () => {
    const { load: _, ...open } = set.phones;
    const phones: SetDescription['phones'] = {
      ...open,
      earpiece: shelf.earpieces.armature!,
      transformer: shelf.transformers.matching!,
    };
    const piezo = find({ ...set, phones }, quiet).find((i) => i.change.key === 'phones.piezo')!;
    const next = piezo.change.situation.set.phones;
    expect(next.transformer !== undefined || next.load !== undefined).toBe(true);
  });
});

test('practice: a small coil alone at VHF asks for a dipole, joined loosely', () => {
  const { aerialCoupling: _, ...alone } = set.tank;
  const bare: SetDescription = { ...set, aerial: { kind: 'coil', axis: { kind: 'vertical' } }, tank: alone };
  const dipole = find(bare)[0]!;
  expect(dipole.change.key).toBe('aerial.dipole');
  expect(dipole.gain!).toBeGreaterThan(20);
  const { aerialCoupling } = dipole.change.situation.set.tank;
  if (aerialCoupling?.kind === 'tap') expect(aerialCoupling.turns).toBeLessThanOrEqual(1);
});

describe('medium wave', () => {
  const am = place(station({ frequency: 1e6, modulation: { kind: 'am', depth: 0.8 }, measuredField: 3e-3, polarisation: 'vertical' }));
  const coil = {
    kind: 'electrical',
    inductance: 200e-6,
    q: 200,
    frequency: 1e6,
    selfCapacitance: 8e-12,
    turns: 60,
    tapCoupling: 0.95,
  } as const;
  const { aerialCoupling: _, ...alone } = set.tank;
  const tank: SetDescription['tank'] = {
    ...alone,
    coil,
    capacitor: { ...set.tank.capacitor, minimum: 15e-12, maximum: 365e-12 },
    detectorCoupling: { kind: 'tap', turns: 30 },
  };
  test('practice: a poor earth asks for a better one, and a short wire for more', () => {
    const wire: SetDescription = {
      ...set,
      aerial: { kind: 'wire-to-earth', horizontal: 8, vertical: 4, diameter: 1e-3, earthResistance: 200 },
      tank: { ...tank, aerialCoupling: { kind: 'tap', turns: 20 } },
    };
    const keys = find(wire, am).map((i) => i.change.key);
    for (const key of ['aerial.earth', 'aerial.longer', 'aerial.taller']) expect(keys).toContain(key);
    expect(keys.some((k) => k === 'aerial.beam' || k === 'aerial.dipole')).toBe(false);
  });
  test('practice: in place of the coil alone, a long wire on whichever tap suits it best', () => {
    const loop: SetDescription = {
      ...set,
      aerial: { kind: 'coil', axis: { kind: 'horizontal', plane: 0 } },
      tank: {
        ...tank,
        coil: mediumWaveCoil,
      },
    };
    const best = find(loop, am).find((i) => i.change.key === 'aerial.wire')!;
    expect(best.gain!).toBeGreaterThan(3);
    expect(best.change.situation.set.tank.aerialCoupling!.kind).toBe('tap');
  });
});

test('the dial is left where it stands when only the audio side changes', () => {
  const r = standAt(quiet, assemble(set, listener));
  const dial = bestDial(r, 0);
  if ('missing' in dial) throw new Error('must tune');
  const { at } = listeningPoint(r, 0, dial);
  const quieter = find(set, quiet).find((i) => i.change.keepsDial);
  if (!quieter) throw new Error('something of the audio side must help');
  const { place: p, set: s, listener: l } = quieter.change.situation;
  const there = evaluate(standAt(p, assemble(s, l)), 0, at.angle);
  expect(there.hearing.sii).toBeCloseTo(quieter.sii, 9);
});
