import { describe, expect, test } from 'vitest';
import {
  assemble,
  BandNoise,
  bandPower,
  EARTH,
  fourierTransform,
  powerSpectrum,
  receiverCircuit,
  SetInTime,
  SOUND_BANDS,
  SOUND_RATE,
  standAt,
} from '#engine';
import { BOLTZMANN } from '../../../src/engine/constants.ts';
import type { CircuitInTime } from '../../../src/engine/listen/circuit.ts';
import { EarpieceNoise } from '../../../src/engine/listen/earpiece-noise.ts';
import { listener, place, set, station } from '../chain/base-set.ts';

const reception = standAt(place(station({ name: 'one', frequency: 98e6 })), assemble(set, listener));
const circuit: CircuitInTime = receiverCircuit(reception.receiver, reception.signals[0]!.arrival);
const ports = Float64Array.from(circuit.laws, () => 1e-5);
const power = (x: Float64Array): number => x.reduce((s, v) => s + v * v, 0);

/** Greatest magnitude of the correlation of two sounds, over all shifts of either. */
function correlation(a: Float64Array, b: Float64Array): number {
  const size = 2 * a.length;
  const transform = fourierTransform(size);
  const re = new Float64Array(size);
  const im = new Float64Array(size);
  re.set(a);
  im.set(b);
  transform.forward(re, im);
  const [productRe, productIm] = [new Float64Array(size), new Float64Array(size)];
  for (let k = 0; k < size; k++) {
    // A and B of two real sounds, out of the transform of a + j b
    const m = (size - k) % size;
    const [aRe, aIm, bRe, bIm] = [(re[k]! + re[m]!) / 2, (im[k]! - im[m]!) / 2, (im[k]! + im[m]!) / 2, (re[m]! - re[k]!) / 2];
    productRe[k] = aRe * bRe + aIm * bIm;
    productIm[k] = aIm * bRe - aRe * bIm;
  }
  transform.inverse(productRe, productIm);
  return productRe.reduce((most, v) => Math.max(most, Math.abs(v)), 0) / Math.sqrt(power(a) * power(b));
}

describe('noise of the earpiece', () => {
  test('law of physics: a resistance alone has 4 k T R in each hertz (Nyquist 1928), from 100 Hz to 15 kHz', () => {
    const resistance = 1e5;
    const temperature = 300;
    const audio: CircuitInTime['audio'] = {
      elements: [{ kind: 'resistor', name: 'R', a: 'out', b: EARTH, resistance }],
      ports: [],
      output: 'out',
    };
    const noise = new EarpieceNoise(5);
    noise.shape(audio, new Float64Array(0), temperature, SOUND_RATE, 0);
    const x = new Float64Array(10 * SOUND_RATE);
    noise.add(x);
    const spectrum = powerSpectrum(x, SOUND_RATE, 4096);
    for (const [low, high] of [
      [100, 1000],
      [1000, 4000],
      [4000, 15_000],
    ] as const) {
      // over B T = 9000 and more the chance of it is 1 %, one standard deviation
      const wanted = 4 * BOLTZMANN * temperature * resistance * (high - low);
      expect(Math.abs(bandPower(spectrum, low, high) / wanted - 1), `${low} Hz`).toBeLessThan(0.04);
    }
  });

  test('identity: another shape begins at the sample it was told for, however the noise is asked for', () => {
    const make = (size: number): Float64Array => {
      const noise = new EarpieceNoise(3);
      noise.shape(circuit.audio, ports, 300, SOUND_RATE, 0);
      noise.shape(
        circuit.audio,
        ports.map((g) => 10 * g),
        300,
        SOUND_RATE,
        1500,
      );
      const out = new Float64Array(5000);
      for (let n = 0; n < out.length; n += size) noise.add(out.subarray(n, n + size));
      return out;
    };
    const whole = make(5000);
    for (const size of [1, 7, 333, 1024]) expect(make(size), `${size}`).toEqual(whole);
  });

  test('identity: noise of the earpiece is not that of the room, though both have the same seed', () => {
    const seed = 7;
    const options = { reference: 98e6, rate: 480_000, angle: 1, noise: { emf: 0, temperature: 300, seed } };
    const thermal = new Float64Array(1 << 16);
    new SetInTime(circuit, [], options).process(thermal);
    const room = new Float64Array(1 << 16);
    new BandNoise(
      Float64Array.from(SOUND_BANDS, (f) => 10 * Math.log10(f)),
      seed,
    ).add(room);
    // 65536 samples, of a noise some 500 Hz wide: 1/sqrt(2 B T) = 0.03, and the greatest of many shifts; of one white noise both have 0.57
    expect(correlation(thermal, room)).toBeLessThan(0.1);
  });
});
