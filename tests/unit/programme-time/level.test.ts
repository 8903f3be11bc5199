import { describe, expect, test } from 'vitest';
import {
  type AudioSource,
  fullToneDrive,
  MersenneTwister,
  type ModulatedSource,
  modulator,
  multiplexRmsDeviation,
  music,
  type ProgrammeModulation,
  programmeSwing,
  recordedAudio,
  speechNoise,
  toneAudio,
} from '#engine';
import { amplitude, discriminate, sinad, take } from './ideal-receiver.ts';
import { am, dB, mono, RATE, received, stereo } from './stations.ts';

const fixed = (gain: number) => ({ drive: { kind: 'fixed', gain } }) as const;
const ridden = (level: number) => ({ drive: { kind: 'ridden', level } }) as const;

/** White noise at 48 kHz, uniform, left and right apart. */
function noise(seed: number, peak: number): AudioSource {
  const chance = new MersenneTwister(seed);
  return {
    rate: 48_000,
    next(left, right) {
      for (let n = 0; n < left.length; n++) {
        left[n] = peak * (2 * chance.uniform() - 1);
        right[n] = peak * (2 * chance.uniform() - 1);
      }
    },
  };
}
/** Lets a station run. */
function run(station: ModulatedSource, seconds: number): ModulatedSource {
  const [re, im] = [new Float64Array(station.rate / 100), new Float64Array(station.rate / 100)];
  for (let k = 0; k < 100 * seconds; k++) station.next(re, im);
  return station;
}

describe('limit: rated deviation is never exceeded', () => {
  for (const [name, modulation, rated] of [
    ['mono', mono, 75e3],
    ['stereo, 90 % and the pilot', stereo, 0.99 * 75e3],
  ] as const)
    test(`${name}: noise, bursts and tones 20 dB too loud`, () => {
      const bursts: AudioSource = {
        rate: 48_000,
        next: ((t) => (left, right) => {
          for (let n = 0; n < left.length; n++, t++) {
            const on = t % 9600 > 4800 ? 10 : 0.1;
            left[n] = on * Math.sin((2 * Math.PI * (700 + ((t / 9600) | 0) * 1300) * t) / 48_000);
            right[n] = t % 7200 > 7000 ? -8 : 0;
          }
        })(0),
      };
      for (const [what, audio] of [
        ['noise', noise(1, 10)],
        ['bursts', bursts],
        ['tone of 14.9 kHz', toneAudio([{ frequency: 14_900, amplitude: 3 }], 'both')],
        ['tone of 60 Hz', toneAudio([{ frequency: 60, amplitude: 10 }], 'left')],
      ] as const) {
        const station = modulator(audio, modulation, RATE, fixed(1));
        // at the envelope's rate, eight times denser than the multiplex
        const frequency = discriminate(take(station, 0.3, 0.5));
        const peak = frequency.reduce((m, f) => Math.max(m, Math.abs(f)), 0);
        expect(peak / rated, what).toBeLessThan(1.004);
        expect(peak / rated, what).toBeGreaterThan(0.9);
        expect(station.meter().peak / rated, what).toBeLessThan(1.004);
        expect(station.meter().leastLimiterGain, what).toBeLessThan(0.5);
      }
    });
  test('AM: the depth', () => {
    const w = take(modulator(noise(2, 10), am, 192_000, fixed(1)), 0.3, 0.5);
    const depth = w.re.reduce((m, x) => Math.max(m, Math.abs(x - 1)), 0);
    expect(depth / 0.9).toBeLessThan(1.004);
    expect(depth / 0.9).toBeGreaterThan(0.9);
  });
});

test('limit: below full modulation the limiter does nothing at all', () => {
  for (const modulation of [mono, stereo, am]) {
    const meter = run(modulator(noise(3, 0.02), modulation, 480_000, fixed(1)), 0.5).meter();
    expect(meter).toMatchObject({ leastLimiterGain: 1, limiting: 0, gain: 1 });
  }
});
test('limit: a steady tone 12 dB too loud is brought to full deviation without distortion, and to the dB that was too much', () => {
  for (const frequency of [400, 1000, 10_000]) {
    const gain = (fullToneDrive(frequency, stereo) as { gain: number }).gain;
    const { left, right, multiplex } = received(toneAudio([{ frequency, amplitude: 4 }]), stereo, fixed(gain));
    expect(dB(amplitude(multiplex, frequency) / 67.5e3)).toBeCloseTo(0, 1);
    expect(sinad(left, [frequency], 15e3), `${frequency} Hz`).toBeGreaterThan(60);
    expect(amplitude(right, frequency)).toBeCloseTo(amplitude(left, frequency), 4);
  }
});
test('limit: both sides come down together, so that the balance of what is quiet does not move', () => {
  const loud = (frequency: number, left: number, right: number): AudioSource => {
    const [a, b] = [toneAudio([{ frequency, amplitude: left }]), toneAudio([{ frequency: 3 * frequency, amplitude: right }])];
    const unused = new Float64Array(48_000);
    return {
      rate: 48_000,
      next(l, r) {
        a.next(l, unused.subarray(0, l.length));
        b.next(r, unused.subarray(0, r.length));
      },
    };
  };
  const { left, right } = received(loud(500, 4, 0.2), { ...stereo, preEmphasis: 0 }, fixed(1));
  expect(dB(amplitude(right, 1500) / amplitude(left, 500))).toBeCloseTo(dB(0.2 / 4), 1);
});
test('limit: after a burst the gain is back with the time constant of 100 ms, and before it is down in 2 ms', () => {
  // 1 kHz at half of full modulation; for 20 ms four times as much
  let t = 0;
  const audio: AudioSource = {
    rate: 48_000,
    next(left, right) {
      for (let n = 0; n < left.length; n++, t++)
        left[n] = right[n] = (t >= 24_000 && t < 24_960 ? 2 : 0.5) * Math.sin((2 * Math.PI * 1000 * t) / 48_000);
    },
  };
  const rate = 480_000;
  const frequency = discriminate(take(modulator(audio, { ...mono, preEmphasis: 0 }, rate, fixed(1)), 0.4, 0.4));
  // greatest over each period
  const level = (time: number): number => {
    const from = Math.round((time - 0.4) * rate);
    return frequency.subarray(from, from + rate / 1000).reduce((m, f) => Math.max(m, Math.abs(f)), 0) / 75e3;
  };
  expect(level(0.495)).toBeCloseTo(0.5, 3); // 5 ms ahead of it nothing happens yet
  expect(level(0.501)).toBeCloseTo(1, 2);
  expect(level(0.515)).toBeCloseTo(1, 2);
  for (const after of [0.01, 0.05, 0.1, 0.2]) {
    // the gain at the end of the burst is held through the reach, 2 ms, and smoothed over as long
    const gain = 1 - 0.5 * Math.exp(-(after - 0.002) / 0.1);
    expect(Math.abs(level(0.52 + after) / 0.5 - gain), `${after} s`).toBeLessThan(0.01);
  }
});

describe('published: multiplex power of Rec. ITU-R BS.412-9: programme ridden to a level has it, whatever the level of its recording', () => {
  const speech = (gain: number): AudioSource => scaled(speechNoise(3), gain);
  const tune = (gain: number): AudioSource => scaled(recordedAudio(music(), 'repeat'), gain);
  function scaled(audio: AudioSource, gain: number): AudioSource {
    return {
      rate: audio.rate,
      next(left, right) {
        audio.next(left, right);
        for (let n = 0; n < left.length; n++) {
          left[n] = left[n]! * gain;
          right[n] = right[n]! * gain;
        }
      },
    };
  }
  for (const [name, audio, modulation, level, gain, seconds] of [
    ['speech noise', speech, stereo, 0, 1, 12],
    ['speech noise', speech, { ...stereo, preEmphasis: 75e-6 }, -3, 0.03, 12],
    ['music', tune, stereo, 0, 0.03, 36],
    ['music', tune, mono, 3, 0.3, 36],
  ] as const)
    test(`${name}, ${modulation.stereo ? 'stereo' : 'mono'}, ${level} dB, recorded at ${dB(gain).toFixed(0)} dB`, () => {
      const meter = run(modulator(audio(gain), modulation, 256_000, ridden(level)), seconds).meter();
      const pilot = modulation.stereo ? 0.09 * 75e3 : 0;
      const programme = Math.sqrt(meter.rms ** 2 - pilot ** 2 / 2);
      const off = dB(programme / programmeSwing(modulation, level));
      expect(Math.abs(off), `${off} dB; ${JSON.stringify(meter)}`).toBeLessThan(name === 'music' ? 0.7 : 0.3);
      const limit = dB(Math.hypot(programmeSwing(modulation, level), pilot / Math.SQRT2) / multiplexRmsDeviation(0));
      expect(Math.abs(meter.multiplexPower! - limit)).toBeLessThan(0.7);
      expect(meter.duration).toBeGreaterThanOrEqual(seconds);
    });
  test('AM: the depth of its level', () => {
    const meter = run(modulator(speechNoise(3), am, 20_000, ridden(0)), 12).meter();
    expect(Math.abs(dB(meter.rms / programmeSwing(am, 0)))).toBeLessThan(0.3);
    expect(meter.multiplexPower).toBeNull();
  });
  test('rival: the meter against the mean square of the discriminated frequency, and its densest minute', () => {
    // 25 s quiet, then 40 s loud: the densest 60 s hold 20 s of the quiet
    let t = 0;
    const audio: AudioSource = {
      rate: 48_000,
      next(left, right) {
        for (let n = 0; n < left.length; n++, t++)
          left[n] = right[n] = (t < 25 * 48_000 ? 0.1 : 0.3) * Math.sin((2 * Math.PI * 1000 * t) / 48_000);
      },
    };
    const bare: ProgrammeModulation = { ...mono, preEmphasis: 0 };
    const station = modulator(audio, bare, 256_000, fixed(1));
    const frequency = discriminate(take(station, 1, 0.02));
    const rms = Math.sqrt(frequency.reduce((s, f) => s + f * f, 0) / frequency.length);
    expect(rms / (7500 / Math.SQRT2)).toBeCloseTo(1, 3);
    expect(station.meter().rms / rms).toBeCloseTo(1, 3);
    const { multiplexPower } = run(station, 63.98).meter();
    const densest = Math.sqrt((40 * (22_500 ** 2 / 2) + 20 * (7500 ** 2 / 2)) / 60);
    expect(multiplexPower).toBeCloseTo(dB(densest / multiplexRmsDeviation(0)), 2);
  });
  test('limit: silence stays silence and keeps the gain; what follows is not thrown at the listener', () => {
    const silent = run(modulator(toneAudio([]), stereo, 256_000, ridden(0)), 4).meter();
    expect(silent.gain).toBe(1);
    expect(silent.rms).toBeCloseTo((0.09 * 75e3) / Math.SQRT2, 0);
    // six seconds of speech noise, then silence: the gain of the noise is kept
    const heard = speechNoise(1);
    let t = 0;
    const audio: AudioSource = {
      rate: 48_000,
      next(left, right) {
        heard.next(left, right);
        for (let n = 0; n < left.length; n++, t++) if (t > 288_000) left[n] = right[n] = 0;
      },
    };
    const station = run(modulator(audio, stereo, 256_000, ridden(0)), 5);
    const { gain } = station.meter();
    expect(Math.abs(dB(run(station, 12).meter().gain / gain))).toBeLessThan(0.5);
  });
});
