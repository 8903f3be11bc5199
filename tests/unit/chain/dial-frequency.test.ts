import { describe, expect, test } from 'vitest';
import { assemble, bestDial, dialAt, dialRange, evaluate, type Reception, type SetDescription, sharpness, standAt, tunedTo } from '#engine';
import { listener, mediumWaveCoil, place, set, station } from './base-set.ts';

const reception = (s: SetDescription, frequency: number): Reception =>
  standAt(place(station({ frequency, polarisation: 'vertical' })), assemble(s, listener));

describe('frequency and angle of the dial, the whole set joined', () => {
  const r = reception(set, 98e6);
  const { receiver } = r;
  const { arrival } = r.signals[0]!;

  test('identity: there and back, over the dial', () => {
    const { lowest, highest } = dialRange(receiver, arrival);
    for (const share of [0.001, 0.2, 0.5, 0.8, 0.999]) {
      const frequency = lowest! + share * (highest! - lowest!);
      const at = dialAt(receiver, arrival, frequency);
      if ('missing' in at) throw new Error('within the range');
      expect(tunedTo(receiver, arrival, at.angle)! / frequency).toBeCloseTo(1, 7);
    }
  });
  test('a carrier is found where the station is found', () => {
    const dial = bestDial(r, 0);
    const at = dialAt(receiver, arrival, 98e6);
    if ('missing' in dial || 'missing' in at) throw new Error('must tune');
    expect(at.angle).toBeCloseTo(dial.resonance.angle, 6);
  });
  test('rival: the natural frequency, from eigenvalues, is the one the dial says, within a tenth of the half bandwidth', () => {
    for (const frequency of [92e6, 98e6, 104e6]) {
      const there = reception(set, frequency);
      const at = dialAt(there.receiver, there.signals[0]!.arrival, frequency);
      if ('missing' in at) throw new Error('must tune');
      const weak = { ...there, signals: there.signals.map((s) => ({ ...s, emf: s.emf * 1e-4 })) };
      const s = sharpness(there.receiver, there.signals[0]!, at.angle, evaluate(weak, 0, at.angle).rest)!;
      expect(Math.abs(s.frequency - frequency)).toBeLessThan((0.1 * s.bandwidth) / 2);
    }
  });
  test('beyond its ends the dial says what is missing, with the sign that mends it', () => {
    const { lowest, highest } = dialRange(receiver, arrival);
    const low = dialAt(receiver, arrival, 0.98 * lowest!);
    const high = dialAt(receiver, arrival, 1.02 * highest!);
    if (!('missing' in low && 'missing' in high)) throw new Error('out of reach');
    expect(low.missing).toBeGreaterThan(0);
    expect(high.missing).toBeLessThan(0);
  });
  test('medium wave, the coil its own aerial', () => {
    const { aerialCoupling: _, ...tank } = set.tank;
    const own: SetDescription = {
      ...set,
      aerial: { kind: 'coil', axis: { kind: 'horizontal', plane: 0 } },
      tank: { ...tank, coil: mediumWaveCoil, capacitor: { ...tank.capacitor, minimum: 15e-12, maximum: 365e-12 } },
    };
    const am = reception(own, 909e3);
    const at = dialAt(am.receiver, am.signals[0]!.arrival, 909e3);
    if ('missing' in at) throw new Error('must tune');
    expect(tunedTo(am.receiver, am.signals[0]!.arrival, at.angle)! / 909e3).toBeCloseTo(1, 7);
  });
});
