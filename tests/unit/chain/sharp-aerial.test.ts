import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { assemble, evaluate, reportStation, standAt } from '#engine';
import { readSetFile } from '#set-file';

function reception(file: string) {
  const read = readSetFile(readFileSync(`examples/${file}`, 'utf8'), { read: (name) => readFileSync(`examples/${name}`, 'utf8') });
  if (!read.ok || !read.value.place) throw new Error('the example cannot be read');
  const { place, aerial, tank, detector, phones, ear, programme } = read.value;
  return standAt(place, assemble({ aerial, tank, detector, phones }, { ear, programme }));
}

/** Far behind a beam, or beside its band, its impedance turns within the swing of a station: what is read there must be the aerial's own. */
test.each(['beam-from-its-elements.json', 'dipole-and-small-coil.json', 'medium-wave.json'])(
  '%s: the impedance near a carrier is that of the aerial, over the whole swing',
  (file) => {
    const { receiver, signals } = reception(file);
    for (const { received, arrival, impedance } of signals) {
      const { frequency, modulation } = received.station;
      const swing = modulation.kind === 'fm' ? modulation.deviation : 4500;
      for (const share of [-1, -0.7, -0.3, 0, 0.2, 0.6, 1]) {
        const f = frequency + share * swing;
        const truth = receiver.aerial!.at(f, arrival).impedance;
        const near = impedance!(f);
        const error = Math.hypot(near.re - truth.re, near.im - truth.im) / Math.hypot(truth.re, truth.im);
        expect(error, `${received.station.name} at ${f} Hz`).toBeLessThan(2e-3);
      }
    }
  },
);

test('levels with the impedance asked at every frequency are those with it interpolated', () => {
  for (const file of ['beam-from-its-elements.json', 'dipole-and-small-coil.json']) {
    const whole = reception(file);
    whole.signals.forEach((signal, k) => {
      const { heard } = reportStation(whole, k);
      if (!heard) return;
      const { arrival } = signal;
      const exact = { ...signal, impedance: (f: number) => whole.receiver.aerial!.at(f, arrival).impedance };
      const asked = { ...whole, signals: whole.signals.map((s, i) => (i === k ? exact : s)) };
      const level = (r: typeof whole) => evaluate(r, k, heard.at.angle, false).rated.level[1]!;
      expect(Math.abs(level(whole) - level(asked)), `${file}, ${signal.received.station.name}`).toBeLessThan(0.05);
    });
  }
});
