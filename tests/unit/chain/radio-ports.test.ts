import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  assemble,
  C,
  EARTH,
  type Element,
  GivenError,
  Network,
  type Receiver,
  RfHalf,
  resonance,
  type SetDescription,
  type Signal,
  standAt,
} from '#engine';
import { bypassOf, radioElements, radioHalf } from '../../../src/engine/chain/rf-half.ts';
import { arbitrarySetFile } from '../set-file/arbitrary.ts';
import { listener, mediumWaveCoil, place, set, station } from './base-set.ts';

/** The rival: the whole radio half as one network, solved anew at every angle. */
const whole = (r: Receiver, s: Signal, angle: number, loss: number): RfHalf =>
  new RfHalf(radioElements(r.tank, r.detector, s, angle, loss), r.tank.detectorNode, bypassOf(r));

function agree(r: Receiver, s: Signal, angle: number, f: number, within: number): void {
  const got = radioHalf(r, s, angle, f);
  const want = whole(r, s, angle, f);
  for (const g of [f, 0.999 * f, 1.02 * f]) {
    got.solve(g);
    want.solve(g);
    const v = Math.hypot(want.vRe, want.vIm);
    const z = Math.hypot(want.zRe, want.zIm);
    expect(Math.hypot(got.vRe - want.vRe, got.vIm - want.vIm)).toBeLessThanOrEqual(within * v);
    expect(Math.hypot(got.zRe - want.zRe, got.zIm - want.zIm)).toBeLessThanOrEqual(within * z);
  }
}

/** Admittance across the top, of one network with the detector at rest in it. */
function topOf(r: Receiver, s: Signal, angle: number, f: number) {
  const rest: Element = {
    kind: 'resistor',
    name: 'rest',
    a: r.tank.detectorNode,
    b: EARTH,
    resistance: r.detector.zeroBiasResistance,
  };
  const network = new Network([...radioElements(r.tank, r.detector, s, angle, f), rest]);
  const out = new Float64Array(4);
  network.thevenin(f, network.node('top'), out);
  return C.inv({ re: out[2]!, im: out[3]! });
}

test('against the whole network at each angle: every coupling, VHF and medium wave, at resonance too', () => {
  const medium = station({ frequency: 900e3, polarisation: 'vertical', modulation: { kind: 'am', depth: 0.8 } });
  const frame = {
    kind: 'geometry',
    turns: 14,
    innerDiameter: 0.5,
    wireDiameter: 0.6e-3,
    pitch: 5e-3,
    metal: 'copper',
    surfaceFactor: 1,
    leadLength: 0.05,
  } as const;
  const link = {
    kind: 'link',
    turns: 1,
    innerDiameter: 10e-3,
    wireDiameter: 1e-3,
    pitch: 2e-3,
    gap: 2e-3,
  } as const;
  const { aerialCoupling: _, ...alone } = set.tank;
  const cases: { readonly sent: ReturnType<typeof station>; readonly made: SetDescription }[] = [
    { sent: station(), made: set },
    { sent: station(), made: { ...set, tank: { ...set.tank, detectorCoupling: { kind: 'tap', turns: 2.25 } as const } } },
    { sent: station(), made: { ...set, tank: { ...set.tank, aerialCoupling: { kind: 'direct' } as const } } },
    { sent: station(), made: { ...set, tank: { ...set.tank, aerialCoupling: { kind: 'series-capacitor', capacitance: 2e-12 } as const } } },
    { sent: station(), made: { ...set, tank: { ...set.tank, aerialCoupling: link } } },
    {
      sent: medium,
      made: {
        ...set,
        aerial: { kind: 'coil', axis: { kind: 'horizontal', plane: 0 } } as const,
        tank: {
          ...alone,
          coil: frame,
          capacitor: { ...set.tank.capacitor, minimum: 12e-12, maximum: 500e-12 },
        },
      },
    },
    {
      sent: medium,
      made: {
        ...set,
        tank: { ...set.tank, coil: mediumWaveCoil, capacitor: { ...set.tank.capacitor, minimum: 12e-12, maximum: 500e-12 } },
      },
    },
  ];
  let tuned = 0;
  for (const { sent, made } of cases) {
    const receiver = assemble(made, listener);
    const signal = standAt(place(sent), receiver).signals[0]!;
    for (const share of [0, 0.21, 0.5, 0.83, 1]) agree(receiver, signal, share * receiver.tank.rotation, sent.frequency, 1e-9);
    const at = resonance(receiver, signal);
    if ('missing' in at) continue;
    tuned++;
    agree(receiver, signal, at.angle, sent.frequency, 1e-9);
    const y = topOf(receiver, signal, at.angle, sent.frequency);
    expect(Math.abs(y.im)).toBeLessThan(1e-4 * y.re);
    expect(Math.abs(at.conductance / y.re - 1)).toBeLessThan(1e-7);
  }
  expect(tuned).toBeGreaterThanOrEqual(5);
});

test('against the whole network, for any set file', () => {
  let seen = 0;
  fc.assert(
    fc.property(arbitrarySetFile, fc.double({ min: 0, max: 1, noNaN: true }), (file, share) => {
      if (!file.place) return;
      const { aerial, tank, detector, phones, ear, programme } = file;
      try {
        const receiver = assemble({ aerial, tank, detector, phones }, { ear, programme });
        for (const signal of standAt(file.place, receiver).signals) {
          agree(receiver, signal, share * receiver.tank.rotation, signal.received.station.frequency, 1e-8);
          seen++;
        }
      } catch (e) {
        if (!(e instanceof GivenError)) throw e;
      }
    }),
    { numRuns: 60, seed: 20261126 },
  );
  expect(seen).toBeGreaterThan(40);
}, 60_000);
