import { describe, expect, test } from 'vitest';
import {
  assemble,
  bestDial,
  C,
  evaluate,
  GivenError,
  type ListeningMeasures,
  listeningPoint,
  type MeasureProgress,
  measured,
  measureListening,
  preEmphasisGain,
  type Reception,
  standAt,
  weaken,
} from '#engine';
import { listener, place, set, station } from '../chain/base-set.ts';
import { example } from '../find/examples.ts';
import { decibels } from './noise.ts';

const only = (r: Reception, k: number): Reception => ({ ...r, signals: [r.signals[k]!] });
function angleOf(r: Reception, k: number): number {
  const dial = bestDial(r, k);
  if ('missing' in dial) throw new Error('must tune');
  return listeningPoint(r, k, dial).at.angle;
}
function received(name: string): Reception {
  const e = example(name);
  return standAt(e.place, assemble(e.set, e.listener));
}

/** Name, station, and limits [dB] of fundamental and harmonics. */
const CASES = [
  ['dipole-and-small-coil.json', 0, 0.05, 0.5],
  ['channel-detector.json', 0, 0.05, 0.5],
  ['beam-and-armature.json', 0, 0.05, 0.5],
  ['rod-and-drop-wire.json', 2, 0.05, 0.5],
  // levels hold the tank's damping still while the tone swings: 0.4 dB where a carrier is strong (tests/reference/sharp-tank), more in its third harmonic
  ['medium-wave.json', 1, 0.4, 2.5],
] as const;

describe('rival: levels, one station alone, no neighbours, in the quasi-static limit', () => {
  for (const [name, k, fundamental, harmonics] of CASES)
    test(`${name}, station ${k}: fundamental ${fundamental} dB, harmonics ${harmonics} dB, SII 0.02 where distortion is small`, () => {
      const r = only(received(name), k);
      const angle = angleOf(r, 0);
      const e = evaluate(r, 0, angle);
      const m = measured(r, { station: 0, angle, speechSeconds: 1 });
      for (const [mine, theirs] of [
        [m.rated, e.rated],
        [m.programme, e.average],
      ] as const) {
        expect(Math.abs(decibels(mine.rms[1]!, theirs.earpiece[1]!))).toBeLessThan(fundamental);
        expect(mine.swing / theirs.swing).toBeCloseTo(1, 9);
        // what stands 60 dB down hangs on the pilot and on the fifth figure of the slope
        for (const n of [2, 3])
          if (theirs.earpiece[n]! > 1e-3 * theirs.earpiece[1]!)
            expect(Math.abs(decibels(mine.rms[n]!, theirs.earpiece[n]!)), `harmonic ${n}, swing ${theirs.swing}`).toBeLessThan(harmonics);
      }
      expect(m.rated.soundLevel).toBeCloseTo(e.rated.level[1]!, fundamental > 0.1 ? 0 : 1);
      // no noise to speak of: harmonics up to 15 kHz against levels' eight
      expect(Math.abs(m.sinad.ratio - e.sinad)).toBeLessThan(1);
      // speech by its bands: levels put the mean of each band in its middle
      expect(Math.abs(m.speech.hearing.level - e.hearing.level)).toBeLessThan(1);
      if (e.distortion < -25) expect(Math.abs(m.speech.hearing.sii - e.hearing.sii)).toBeLessThan(0.02);
      // levels give distortion the spectrum of the programme: the sound has less of it in the low bands and up to 10 dB more in the high ones
      else expect(Math.abs(m.speech.hearing.sii - e.hearing.sii)).toBeLessThan(0.12);
      expect(m.leakage).toBeNull();
      // of AM's fifteen bands the highest may drown in the distortion of a strong carrier
      expect(m.speech.found.filter((found) => found).length).toBeGreaterThan(12);
      check(m);
    }, 180_000);
});

/** Names differ, all is a number or null. */
function check(m: ListeningMeasures): void {
  const figures = m.figures();
  expect(new Set(figures.map((f) => f.name)).size).toBe(figures.length);
  for (const f of figures) {
    expect(f.value === null || Number.isFinite(f.value), f.name).toBe(true);
    for (const t of f.working.terms) expect(t.value === null || Number.isFinite(t.value), `${f.name} ${t.symbol}`).toBe(true);
  }
}

describe('the base set', () => {
  const stereo = station({ modulation: { kind: 'fm', deviation: 75e3, preEmphasis: 50e-6, stereo: true } });
  const neighbour = station({ name: 'Neighbour', frequency: 98.4e6, power: 3e3, position: { distance: 9000, bearing: 1 } });
  // in square law, where levels of two stations hold
  const weak = (x: Reception): Reception => weaken(weaken(x, 0, 30), 1, 30);
  const r = weak(standAt(place(stereo, neighbour), assemble(set, listener)));
  const angle = angleOf(r, 0);
  const progress: MeasureProgress[] = [];
  const steps = measureListening(r, { station: 0, angle, speechSeconds: 1 });
  let step = steps.next();
  while (!step.done) {
    progress.push(step.value);
    step = steps.next();
  }
  const m = step.value;
  const e = evaluate(r, 0, angle);
  const { phones } = r.receiver;
  const gain = (f: number): number => {
    const z = phones.load(f);
    return C.abs(C.mul(z, phones.transfer(f))) / C.abs(C.add(C.ONE, C.scale(z, m.listening.set.bias.outputConductances[0]!)));
  };

  test('rival: leakage of a neighbour and what it leaves of the programme, against levels: 1 dB', () => {
    const leak = e.leaks[0]!;
    // levels put it over the programme beside the neighbour, the sound over the programme alone
    expect(Math.abs(m.leakage!.neighbours[0]!.level - (leak.programme + leak.hush))).toBeLessThan(1);
    expect(m.leakage!.neighbours[0]!.name).toBe('Neighbour');
    expect(Math.abs(m.leakage!.unweighted - m.leakage!.neighbours[0]!.level)).toBeLessThan(1);
    expect(Math.abs(m.speech.hush! - leak.hush)).toBeLessThan(0.5);
  });
  test('closed form: the response is pre-emphasis (BS.450) and the audio network on the detector: 0.2 dB', () => {
    for (const p of m.response) {
      const emphasis = preEmphasisGain(p.frequency, 50e-6) - preEmphasisGain(1000, 50e-6);
      expect(Math.abs(p.voltage - emphasis - decibels(gain(p.frequency), gain(1000))), `${p.nominal} Hz`).toBeLessThan(0.2);
      expect(p.sound - p.voltage).toBeCloseTo(phones.sensitivity(p.frequency) - phones.sensitivity(1000), 1);
    }
    expect(m.response.find((p) => p.nominal === 1000)!.voltage).toBe(0);
  });
  test('closed form: the pilot is 0.1 of the rated tone, through the same network: 0.5 dB', () => {
    expect(Math.abs(m.stereo!.pilot - decibels(0.1 * gain(19_000), gain(1000)))).toBeLessThan(0.5);
    // 0.45 of full deviation rms against 0.9/sqrt 2
    expect(Math.abs(m.stereo!.subcarrier - decibels(Math.SQRT1_2 * gain(38_000), gain(1000)))).toBeLessThan(0.5);
    expect(m.stereo!.difference).toBeLessThan(-30);
  });
  test('progress rises from 0 to 1 and says what is done, in pieces a face can stop between', () => {
    progress.forEach((p, k) => {
      expect(p.share).toBeGreaterThanOrEqual(progress[k - 1]?.share ?? 0);
      expect(p.share).toBeLessThanOrEqual(1);
    });
    expect(progress[0]!.share).toBe(0);
    expect(progress.at(-1)!.share).toBeGreaterThan(0.97);
    expect(new Set(progress.map((p) => p.doing)).size).toBe(9);
    expect(progress.length).toBeGreaterThan(100);
    check(m);
  });
});

describe('what cannot be, and what is not heard', () => {
  const r = standAt(place(), assemble(set, listener));
  test('a station that is not there, lengths, seeds', () => {
    const start = (options: object) => () => measureListening(r, { station: 0, angle: 1, ...options }).next();
    expect(start({ station: 2 })).toThrow(GivenError);
    expect(start({ speechSeconds: 0.2 })).toThrow(GivenError);
    expect(start({ seed: -1 })).toThrow(GivenError);
    expect(start({ angle: Number.NaN })).not.toThrow();
    expect(() => measured(r, { station: 0, angle: Number.NaN })).toThrow(GivenError);
  });
  test('limit: a station far below the noise is told without NaN, and its programme is found in no band', () => {
    const m = measured(weaken(r, 0, 150), { station: 0, angle: angleOf(r, 0), speechSeconds: 1 });
    check(m);
    expect(m.speech.hearing.sii).toBe(0);
    expect(m.speech.hush).toBeNull();
    expect(m.sinad.ratio).toBeLessThan(0.1);
  });
});
