import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  assemble,
  bestDial,
  envelopeRate,
  evaluate,
  GivenError,
  type ListeningOptions,
  listen,
  listeningFigures,
  modulator,
  type Reception,
  receiverCircuit,
  type SetDescription,
  SetInTime,
  SOUND_RATE,
  speechNoise,
  standAt,
  weaken,
} from '#engine';
import { audioStepping } from '../../../src/engine/listen/audio-stepping.ts';
import { OneDetectorLoop } from '../../../src/engine/listen/one-detector-loop.ts';
import { onePortFits } from '../../../src/engine/listen/one-port-fit.ts';
import { SeveralDetectorsLoop } from '../../../src/engine/listen/several-detectors-loop.ts';
import { Tuner } from '../../../src/engine/listen/tuned-set.ts';
import { listener, place, set, station } from '../chain/base-set.ts';
import { carrier, decibels, fmTone, harmonics } from './signals.ts';

const reception = (s: SetDescription = set, ...offsets: number[]): Reception =>
  standAt(place(...[0, ...offsets].map((o, k) => station({ name: `station ${k}`, frequency: 98e6 + o }))), assemble(s, listener));
const flank = (r: Reception): number => {
  const dial = bestDial(r, 0);
  if ('missing' in dial) throw new Error('must tune');
  return dial.points[0]!.angle;
};
const tones: ListeningOptions['broadcast'] = (k, rate) => ({ source: fmTone(rate, 1000 + 300 * k, 75e3), turned: false });
const rms = (x: Float64Array): number => Math.sqrt(x.reduce((s, v) => s + v * v, 0) / x.length);

describe('blocks', () => {
  const r = reception(set, 300e3);
  const angle = flank(r);
  /** the same sound asked for in pieces, the dial turned at the same place of it */
  const sound = (pieces: readonly number[], turnAt: number, noise: boolean): Float64Array => {
    const { set: s } = listen(r, { station: 0, angle, rate: 960_000, broadcast: tones, ...(noise ? { noise: 3 } : {}) });
    const out = new Float64Array(2000);
    const cuts = [...new Set([...pieces, turnAt, 2000])].sort((a, b) => a - b);
    let at = 0;
    for (const cut of cuts) {
      s.process(out.subarray(at, cut));
      at = cut;
      if (cut === turnAt) s.setAngle(angle + 0.02, 0.015);
    }
    return out;
  };
  test('identity: the block asked for never changes the result, to the bit, while the dial turns and with noise', () => {
    for (const noise of [false, true]) {
      const whole = sound([], 700, noise);
      fc.assert(
        fc.property(fc.array(fc.integer({ min: 1, max: 1999 }), { minLength: 3, maxLength: 40 }), (pieces) => {
          expect(sound(pieces, 700, noise)).toEqual(whole);
        }),
        { numRuns: 5, seed: 7 },
      );
    }
  });
  test('identity: the same seed gives the same noise, another another', () => {
    const make = (noise: number): Float64Array => {
      const x = new Float64Array(500);
      listen(r, { station: 0, angle, broadcast: tones, noise }).set.process(x);
      return x;
    };
    expect(make(5)).toEqual(make(5));
    expect(make(5)).not.toEqual(make(6));
  });
});

describe('rest and silence', () => {
  test('limit: without any e.m.f. there is no sound at all', () => {
    const r = reception();
    const circuit = receiverCircuit(r.receiver, r.signals[0]!.arrival);
    const rate = 480_000;
    const none = new SetInTime(circuit, [], { reference: 98e6, rate, angle: 1 });
    const zero = new SetInTime(circuit, [{ name: 'a', frequency: 98e6, emf: 0, halfWidth: 1e5, source: fmTone(rate, 1000, 75e3) }], {
      reference: 98e6,
      rate,
      angle: 1,
    });
    for (const s of [none, zero]) {
      const x = new Float64Array(2000);
      s.process(x);
      expect(x.every((v) => v === 0)).toBe(true);
      expect(s.report().failures).toBe(0);
    }
  });
  test('limit: a bare carrier sounds like nothing from the first sample on: the set begins at rest', () => {
    for (const gain of [-40, 0, 20]) {
      const r = weaken(reception(), 0, gain);
      const { set: s } = listen(r, { station: 0, angle: flank(r), broadcast: (_, rate) => ({ source: carrier(rate), turned: true }) });
      const x = new Float64Array(9600);
      s.process(x);
      const [output] = s.bias.outputs;
      for (const v of x) expect(Math.abs(v / output! - 1)).toBeLessThan(2e-4);
    }
  });
  test('identity: the bias at rest is that of levels', () => {
    const r = reception();
    const angle = flank(r);
    const { set: s } = listen(r, { station: 0, angle, broadcast: tones });
    // levels hold the modulated mean; the bare carrier's is within the second order of the modulation
    expect(s.bias.outputs[0]! / evaluate(r, 0, angle).average.meanOutput).toBeCloseTo(1, 2);
  });
  test('energy: the direct output never exceeds the power available from the aerial', () => {
    for (const gain of [-30, 0, 30]) {
      const r = weaken(reception(), 0, gain);
      const signal = r.signals[0]!;
      const angle = flank(r);
      const { set: s } = listen(r, { station: 0, angle, broadcast: tones });
      const available = signal.emf ** 2 / (4 * signal.impedance!(98e6).re);
      const given = s.bias.outputs[0]! * s.bias.currents[0]!;
      expect(given).toBeGreaterThan(0);
      expect(given).toBeLessThan(available);
      // nor what the law takes in as radio power
      expect(given).toBeLessThanOrEqual(0.5 * s.bias.amplitudes[0]! ** 2 * s.bias.conductances[0]! * 1.0001);
    }
  });
});

describe('turning the dial while it plays', () => {
  const r = reception();
  const angle = flank(r);
  test('limit: once turned, it plays as a set that was there from the start', () => {
    const { set: s } = listen(r, { station: 0, angle, broadcast: tones });
    s.process(new Float64Array(4800));
    s.setAngle(angle + 0.05);
    s.process(new Float64Array(0.3 * SOUND_RATE));
    const there = listen(r, { station: 0, angle: angle + 0.05, broadcast: tones }).set;
    there.process(new Float64Array(4800 + 0.3 * SOUND_RATE));
    const a = new Float64Array(4800);
    const b = new Float64Array(4800);
    s.process(a);
    there.process(b);
    const swing = harmonics(b, SOUND_RATE, 1000, 3)[1]!;
    for (let n = 0; n < a.length; n++) expect(Math.abs(a[n]! - b[n]!)).toBeLessThan(1e-4 * swing);
    expect(s.angle).toBe(angle + 0.05);
  });
  test('limit: turned slowly, the mean goes where the bias at each angle is', () => {
    const { set: s } = listen(r, { station: 0, angle, broadcast: (_, rate) => ({ source: carrier(rate), turned: true }) });
    s.setAngle(angle + 0.06, 0.6);
    const x = new Float64Array(0.3 * SOUND_RATE);
    s.process(x);
    const halfway = listen(r, { station: 0, angle: s.angle, broadcast: tones }).set;
    expect(x.at(-1)! / halfway.bias.outputs[0]!).toBeCloseTo(1, 2);
  });
  test('no click larger than physics: a turn of 20 ms is as smooth as the audio side makes it', () => {
    const { set: s } = listen(r, { station: 0, angle, broadcast: (_, rate) => ({ source: carrier(rate), turned: true }) });
    const before = s.bias.outputs[0]!;
    s.setAngle(angle + 0.03);
    const x = new Float64Array(0.2 * SOUND_RATE);
    s.process(x);
    const moved = Math.abs(x.at(-1)! - before);
    expect(moved).toBeGreaterThan(0.05 * before);
    let steepest = 0;
    let bend = 0;
    for (let n = 2; n < x.length; n++) {
      steepest = Math.max(steepest, Math.abs(x[n]! - x[n - 1]!));
      bend = Math.max(bend, Math.abs(x[n]! - 2 * x[n - 1]! + x[n - 2]!));
    }
    // the change spread over 20 ms or the time constant of the load (500 kohm, 15 nF), whichever is longer, at twice its mean rate
    expect(steepest).toBeLessThan((2 * moved) / (0.02 * SOUND_RATE));
    // a step of a sample would bend by its own height
    expect(bend).toBeLessThan(0.002 * moved);
  });
});

describe('noise', () => {
  test('rival: the level that levels give for it, in third octaves, 0.5 dB', () => {
    const r = weaken(reception(), 0, -65);
    const angle = flank(r);
    const quiet = listen(r, { station: 0, angle, broadcast: (_, rate) => ({ source: carrier(rate), turned: true }), noise: 1 }).set;
    const x = new Float64Array(4 * SOUND_RATE);
    quiet.process(x);
    const mean = x.reduce((s, v) => s + v, 0) / x.length;
    const e = evaluate(r, 0, angle);
    const levelsNoise = e.programmeVoltage * 10 ** (e.noise / 20);
    // third octaves of speech run from 141 Hz to 8.9 kHz
    expect(Math.abs(decibels(bandRms(x, mean, 141.25, 8912.5), levelsNoise))).toBeLessThan(0.5);
  });
});

/** Rms of what lies in a band, by the Fourier transform of Hann-windowed stretches. */
function bandRms(x: Float64Array, mean: number, low: number, high: number): number {
  const size = 4800;
  let power = 0;
  let stretches = 0;
  for (let start = 0; start + size <= x.length; start += size, stretches++) {
    const from = Math.ceil((low * size) / SOUND_RATE);
    const to = Math.floor((high * size) / SOUND_RATE);
    for (let k = from; k <= to; k += 7) {
      let re = 0;
      let im = 0;
      for (let n = 0; n < size; n++) {
        const w = 1 - Math.cos((2 * Math.PI * n) / size);
        const angle = (2 * Math.PI * ((k * n) % size)) / size;
        re += w * (x[start + n]! - mean) * Math.cos(angle);
        im -= w * (x[start + n]! - mean) * Math.sin(angle);
      }
      // every seventh line stands for seven; the window's power is 3/2
      power += (7 * 2 * (re * re + im * im)) / (1.5 * size * size);
    }
  }
  return Math.sqrt(power / stretches);
}

describe('several stations, several detectors', () => {
  test('a station beyond the window is left out and its level is told', () => {
    const r = reception(set, 0.4e6, 2.5e6);
    const heard = listen(r, { station: 0, angle: flank(r), broadcast: tones });
    expect(heard.heard.map((s) => s.station)).toEqual([0, 1]);
    expect(heard.leftOut.map((s) => s.station)).toEqual([2]);
    expect(heard.leftOut[0]!.level).toBeLessThan(heard.heard[1]!.level);
    expect(heard.folding).toBeLessThan(0);
    const figures = listeningFigures(heard);
    // the rate is what its formula says: twice the spectrum and its room, next multiple of 96 kHz
    const factor = Number(figures.find((f) => f.name === 'listen.rate')!.working.formula.match(/([0-9.]+) W with several/)![1]);
    for (const offset of [0.9e6, 1.1e6, 1.2e6, 1.3e6, 1.4e6]) {
      const wanted = factor * (offset + 90e3);
      const made = envelopeRate([
        { offset: 0, halfWidth: 90e3, kind: 'fm' },
        { offset, halfWidth: 90e3, kind: 'fm' },
      ]);
      expect(made - wanted, `${offset} Hz`).toBeGreaterThanOrEqual(0);
      expect(made - wanted, `${offset} Hz`).toBeLessThan(96e3);
    }
    expect(new Set(figures.map((f) => f.name)).size).toBe(figures.length);
    expect(figures.find((f) => f.name === 'listen.leftOut')!.value).toBe(heard.leftOut[0]!.level);
    for (const f of figures) expect(Number.isFinite(f.value), f.name).toBe(true);
    expect(heard.rate).toBeGreaterThan(2 * (0.4e6 + 128e3));
  });
  test('identity: a programme already turned to its offset sounds as one that is turned here', () => {
    const r = reception(set, 200e3);
    const angle = flank(r);
    const modulation = r.signals[0]!.received.station.modulation;
    const make = (turned: boolean): Float64Array => {
      const { set: s } = listen(r, {
        station: 0,
        angle,
        rate: 960_000,
        broadcast: (k, rate, offset) => ({
          source: modulator(speechNoise(k + 1), modulation, rate, { drive: { kind: 'fixed', gain: 1 }, offset: turned ? offset : 0 }),
          turned,
        }),
      });
      const x = new Float64Array(0.5 * SOUND_RATE);
      s.process(x);
      return x;
    };
    const a = make(true);
    const b = make(false);
    // only the carriers' phase against each other differs, and beats are beyond hearing
    expect(Math.abs(decibels(rms(a), rms(b)))).toBeLessThan(0.01);
  });
  test('rival: the loop for any number of detectors, with one, against the loop that looks its answers up', () => {
    const r = reception();
    const circuit = receiverCircuit(r.receiver, r.signals[0]!.arrival);
    const rate = 960_000;
    const audio = audioStepping(circuit.audio, rate);
    const fits = onePortFits(circuit.radio(1, 98e6).source.impedance!, 98e6, 200e3);
    const angle = flank(r);
    const tuner = new Tuner(
      circuit,
      fits,
      { reference: 98e6, rate, bands: [{ middle: 0, half: 128e3 }], taps: 8 },
      [{ frequency: 98e6, emf: r.signals[0]!.emf }],
      audio.steady,
    );
    const { tuning, bias } = tuner.at(angle);
    // without the taps on past currents, which the general loop does not have
    const { numbers } = tuning;
    const past = tuning.modes * 8 + 2;
    numbers.fill(0, past, past + 4);
    const loops = [new OneDetectorLoop(circuit.laws[0]!, audio), new SeveralDetectorsLoop(circuit.laws, audio)];
    const count = 6000;
    const drive = bias.amplitudes[0]!;
    const input = {
      emfRe: new Float64Array(count),
      emfIm: new Float64Array(count),
      feedRe: [Float64Array.from({ length: count }, (_, n) => drive * (1 + 0.3 * Math.cos(n / 50)) * Math.cos(n / 9))],
      feedIm: [Float64Array.from({ length: count }, (_, n) => drive * (1 + 0.3 * Math.cos(n / 50)) * Math.sin(n / 9))],
    };
    const [a, b] = loops.map((loop) => {
      const ear = new Float64Array(count);
      loop.tune(tuning, bias);
      loop.rest(bias, []);
      loop.run(input, 0, count, ear);
      expect(loop.report.failures).toBe(0);
      return ear;
    });
    for (let n = 0; n < count; n++) expect(Math.abs(a![n]! - b![n]!)).toBeLessThan(3e-6 * Math.abs(b![n]!));
  });
});

describe('what cannot be', () => {
  test('a wrong rate, a source at another rate, a station that is not there', () => {
    const r = reception();
    const circuit = receiverCircuit(r.receiver, r.signals[0]!.arrival);
    expect(() => new SetInTime(circuit, [], { reference: 98e6, rate: 500_000, angle: 1 })).toThrow(GivenError);
    expect(() => listen(r, { station: 0, angle: 1, broadcast: () => ({ source: carrier(48_000), turned: false }) })).toThrow(
      /listen.station 0 is 48000 Hz/,
    );
    const at = (emf: number, frequency: number) =>
      new SetInTime(circuit, [{ name: 'a', frequency, emf, halfWidth: 1e5, source: carrier(480_000) }], {
        reference: 98e6,
        rate: 480_000,
        angle: 1,
      });
    expect(() => at(Number.NaN, 98e6)).toThrow(GivenError);
    expect(() => at(1e-3, 98.3e6)).toThrow(/98300000 Hz/);
    expect(() => at(1e-3, 98e6).setAngle(Number.NaN)).toThrow(GivenError);
    expect(() => listen(r, { station: 3, angle: 1, broadcast: tones })).toThrow(GivenError);
  });
});
