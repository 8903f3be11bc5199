import { expect, test } from 'vitest';
import { assemble, resonance, type SetDescription, standAt, Window } from '#engine';
import { radioHalf } from '../../../src/engine/chain/rf-half.ts';
import { listener, place, set, station } from './base-set.ts';

const f0 = 909e3;
const HALF_WIDTH = 10e3;

/** A coil on a jar, tapped low, with no more bypass than the cord of the phones: Z all but vanishes on one side of the resonance, 10 kHz away. */
const { aerialCoupling: _, ...alone } = set.tank;
const tapped: SetDescription = {
  ...set,
  aerial: { kind: 'coil', axis: { kind: 'horizontal', plane: 0 } },
  tank: {
    ...alone,
    coil: {
      kind: 'geometry',
      turns: 49,
      innerDiameter: 70e-3,
      wireDiameter: 0.8e-3,
      pitch: 2e-3,
      metal: 'copper',
      surfaceFactor: 1,
      leadLength: 40e-3,
    },
    capacitor: { ...set.tank.capacitor, minimum: 12e-12, maximum: 365e-12 },
    detectorCoupling: { kind: 'tap', turns: 12 },
  },
  phones: { ...set.phones, bypass: 0 },
};

test('between its points a window is what the network gives, solved there', () => {
  const sent = station({ frequency: f0, polarisation: 'vertical', modulation: { kind: 'am', depth: 0.8 } });
  const receiver = assemble(tapped, listener);
  const signal = standAt(place(sent), receiver).signals[0]!;
  const at = resonance(receiver, signal);
  if ('missing' in at) throw new Error('it does not tune');
  const rf = radioHalf(receiver, signal, at.angle, f0);
  const window = new Window(rf, f0, HALF_WIDTH);
  const atCarrier = Math.hypot(rf.zRe, rf.zIm);
  let least = atCarrier;
  for (let x = -0.98; x < 1; x += 0.049) {
    rf.solve(f0 + HALF_WIDTH * x);
    window.read(x);
    const v = Math.hypot(rf.vRe, rf.vIm);
    const z = Math.hypot(rf.zRe, rf.zIm);
    least = Math.min(least, z);
    expect(Math.hypot(window.vRe - rf.vRe, window.vIm - rf.vIm)).toBeLessThan(1e-4 * v);
    expect(Math.hypot(window.zRe - rf.zRe, window.zIm - rf.zIm)).toBeLessThan(1e-3 * z);
  }
  // the hard case is there
  rf.solve(f0);
  expect(least).toBeLessThan(0.2 * Math.hypot(rf.zRe, rf.zIm));
});
