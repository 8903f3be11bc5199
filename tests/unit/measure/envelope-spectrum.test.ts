import { describe, expect, test } from 'vitest';
import { assemble, envelopeSpectrum, evaluate, GivenError, programmeSwing, type Reception, type Station, standAt } from '#engine';
import { listener, place, set, station } from '../chain/base-set.ts';
import { example } from '../find/examples.ts';

const reception = (...stations: Station[]): Reception => standAt(place(...stations), assemble(set, listener));
const sum = (x: Float64Array, from = 0, to = x.length): number => x.slice(from, to).reduce((s, v) => s + v, 0);
const neighbour = station({ name: 'Neighbour', frequency: 98.4e6 });

describe('radio spectrum about the dial', () => {
  const r = reception(station(), neighbour, station({ name: 'Far off', frequency: 104e6 }));
  const angle = 1.5;
  const s = envelopeSpectrum(r, { station: 0, angle });
  const at = (f: number): number => Math.round((f - s.frequency[0]!) / s.binWidth);

  test('identity: its bins hold the power of the stations, 0.01 dB: a modulated carrier of FM has the power of a bare one', () => {
    const [a, b] = r.signals.map((x) => x.emf ** 2);
    expect(sum(s.aerial) / (a! + b!)).toBeCloseTo(1, 3);
    expect(sum(s.aerial, at(98.2e6)) / b!).toBeCloseTo(1, 3);
    expect(s.stations.map((x) => x.name)).toEqual(['Lantern Hill', 'Neighbour']);
    expect(s.binWidth).toBe(1000);
    expect(s.frequency.length).toBe(3001);
  });
  test('closed form: rms width of FM about its carrier is the rms deviation, whatever modulates it: 3 %', () => {
    // a quarter of a second of noise; mean square of the instantaneous frequency is the second moment of the spectrum (P. M. Woodward, 1952; textbook)
    const middle = at(98e6);
    let moment = 0;
    for (let k = middle - 190; k <= middle + 190; k++) moment += s.aerial[k]! * (k - middle) ** 2;
    const rms = Math.sqrt(moment / sum(s.aerial, middle - 190, middle + 191));
    // Hann's window adds its own second moment, a third of a bin squared
    const deviation = programmeSwing(station().modulation, listener.programme.level) / 1000;
    expect(rms / Math.hypot(deviation, Math.sqrt(1 / 3))).toBeGreaterThan(0.97);
    expect(rms / Math.hypot(deviation, Math.sqrt(1 / 3))).toBeLessThan(1.03);
  });
  test('rival: the response is what levels have across the detector at the carrier, in square law 0.05 dB', () => {
    const weak: Reception = { ...r, signals: r.signals.map((x) => ({ ...x, emf: x.emf * 1e-3 })) };
    const e = evaluate(weak, 0, angle, false);
    const gain = 20 * Math.log10(e.rest.amplitude / (Math.SQRT2 * weak.signals[0]!.emf));
    const found = envelopeSpectrum(weak, { station: 0, angle });
    expect(found.response[at(98e6)]!).toBeCloseTo(gain, 1);
  });
  test('closed form: AM has its carrier in one line, but for the window, and nothing beyond 5.5 kHz', () => {
    const e = example('medium-wave.json');
    const am = standAt(e.place, assemble(e.set, e.listener));
    const a = envelopeSpectrum(am, { station: 0, angle: 1 });
    expect(a.binWidth).toBe(100);
    const emf2 = am.signals[0]!.emf ** 2;
    const middle = a.aerial.length >> 1;
    // Hann's window gives two thirds to the line, a sixth to either side
    expect(a.aerial[middle]! / emf2).toBeCloseTo(2 / 3, 2);
    const swing = programmeSwing({ kind: 'am', depth: 0.8 }, listener.programme.level);
    expect(sum(a.aerial) / emf2).toBeCloseTo(1 + swing ** 2, 2);
    expect(sum(a.aerial, 0, middle - 56) / emf2).toBeLessThan(1e-6);
  });
  test('a span that is too wide, a station that is not there', () => {
    expect(() => envelopeSpectrum(r, { station: 0, angle, span: 5e6 })).toThrow(GivenError);
    expect(() => envelopeSpectrum(r, { station: 5, angle })).toThrow(GivenError);
    expect(envelopeSpectrum(r, { station: 0, angle, span: 200e3 }).frequency.length).toBe(401);
  });
});
