import { expect, test } from 'vitest';
import { modulator, toneAudio, twoTones } from '#engine';
import { amplitude, envelopeSpectrum, sinad, take } from './ideal-receiver.ts';
import { am, asGiven, dB } from './stations.ts';

test('limit: the envelope is 1 + m x: a tone has the depth, and the programme comes back with more than 60 dB SINAD, at any rate', () => {
  for (const rate of [20_000, 48_000, 192_000, 1_500_000])
    for (const frequency of [50, 1000, 4500]) {
      const { length, re, im } = envelopeSpectrum(
        take(modulator(toneAudio([{ frequency, amplitude: 0.99 }]), am, rate, asGiven), 0.8, 0.04),
      );
      const spectrum = { length, re, im };
      expect(amplitude(spectrum, frequency) / (0.99 * 0.9), `${frequency} Hz at ${rate}`).toBeCloseTo(1, 2.5);
      expect(sinad(spectrum, [frequency], Math.min(9500, rate / 2 - 500)), `${frequency} Hz at ${rate}`).toBeGreaterThan(70);
    }
});
test('limit: two tones give no third above -70 dB', () => {
  const spectrum = envelopeSpectrum(take(modulator(toneAudio(twoTones(1000, 1100)), am, 192_000, asGiven), 0.8, 0.04));
  for (const f of [100, 900, 1200, 2100]) expect(dB(amplitude(spectrum, f) / amplitude(spectrum, 1000))).toBeLessThan(-70);
});
test('published: audio ends at 4.5 kHz, half a channel of 9 kHz; from 5.5 kHz on it is 60 dB down', () => {
  const sent = (frequency: number): number =>
    dB(
      amplitude(envelopeSpectrum(take(modulator(toneAudio([{ frequency, amplitude: 0.5 }]), am, 192_000, asGiven), 0.8, 0.04)), frequency) /
        0.45,
    );
  expect(Math.abs(sent(4500))).toBeLessThan(0.01);
  for (const f of [5500, 6000, 9000, 15_000, 20_000]) expect(sent(f), `${f} Hz`).toBeLessThan(-60);
});
test('limit: both sides are sent as their half sum', () => {
  const sent = (side: 'left' | 'opposite'): number =>
    amplitude(
      envelopeSpectrum(take(modulator(toneAudio([{ frequency: 400, amplitude: 0.5 }], side), am, 48_000, asGiven), 0.8, 0.04)),
      400,
    );
  expect(sent('left')).toBeCloseTo(0.225, 4);
  expect(sent('opposite')).toBeLessThan(1e-12);
});
