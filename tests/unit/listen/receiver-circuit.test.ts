import { expect, test } from 'vitest';
import { assemble, standAt } from '#engine';
import { radioHalf } from '../../../src/engine/chain/rf-half.ts';
import { openResponse } from '../../../src/engine/listen/open-response.ts';
import { receiverCircuit } from '../../../src/engine/listen/receiver-circuit.ts';
import { listener, place, set } from '../chain/base-set.ts';

test('the radio half in time is that of the chain, with a bypass and with the cord of the phones alone', () => {
  for (const bypass of [470e-12, 0]) {
    const receiver = assemble({ ...set, phones: { ...set.phones, bypass } }, listener);
    const signal = standAt(place(), receiver).signals[0]!;
    const f = signal.received.station.frequency;
    for (const angle of [0.4, 1.1, 2.3]) {
      const got = openResponse(receiverCircuit(receiver, signal.arrival).radio(angle, f), f);
      const want = radioHalf(receiver, signal, angle, f);
      want.solve(f);
      const v = Math.hypot(want.vRe, want.vIm);
      const z = Math.hypot(want.zRe, want.zIm);
      expect(Math.hypot(got.voltage.re - want.vRe, got.voltage.im - want.vIm)).toBeLessThan(1e-6 * v);
      expect(Math.hypot(got.impedance.re - want.zRe, got.impedance.im - want.zIm)).toBeLessThan(1e-6 * z);
    }
  }
});
