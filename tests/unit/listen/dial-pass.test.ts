import { describe, expect, test } from 'vitest';
import {
  assemble,
  bestDial,
  DialPassMeter,
  type DialTurn,
  evaluate,
  fullToneDrive,
  humpsOf,
  listen,
  modulator,
  passOf,
  SOUND_RATE,
  standAt,
  toneAudio,
} from '#engine';
import { listener, place, set, station } from '../chain/base-set.ts';
import { decibels } from './signals.ts';

const TONE = 1000;

/** The set of the tests turned across its station in the given time; what the meter made of the earpiece's voltage. */
function turned(seconds: number) {
  const reception = standAt(place(station()), assemble(set, listener));
  const dial = bestDial(reception, 0);
  if ('missing' in dial) throw new Error('must tune');
  const { tank } = reception.receiver;
  const turn: DialTurn = { ...passOf(dial, tank.rotation, tank.capacitance(tank.rotation) > tank.capacitance(0)), seconds };
  const { set: going } = listen(reception, {
    station: 0,
    angle: turn.from,
    broadcast: (k, rate, offset) => {
      const { modulation } = reception.signals[k]!.received.station;
      const audio = toneAudio([{ frequency: TONE, amplitude: 1 }]);
      return { source: modulator(audio, modulation, rate, { drive: fullToneDrive(TONE, modulation), offset }), turned: true };
    },
  });
  const meter = new DialPassMeter(turn, TONE);
  const block = new Float64Array(SOUND_RATE / 20);
  going.setAngle(turn.to, seconds);
  for (let t = 0; t < seconds * 20; t++) {
    going.process(block);
    meter.add(block);
  }
  return { reception, dial, turn, points: meter.points };
}

describe('rival: the sound while the dial is turned slowly, against levels of the standing set', () => {
  const { reception, dial, turn, points } = turned(2);
  const humps = humpsOf(points, dial.resonance.angle, 2);

  test('each piece of sound, within 0.15 dB where it is not near the dip', () => {
    let compared = 0;
    for (const p of points) {
      const steady = evaluate(reception, 0, p.angle).rated.earpiece[1]!;
      const x = Math.abs(p.angle - dial.resonance.angle) / dial.resonance.halfWidth;
      if (x < 0.4) continue;
      compared++;
      expect(Math.abs(decibels(p.rms, steady)), `x = ${x.toFixed(2)}`).toBeLessThan(0.15);
    }
    expect(compared).toBeGreaterThan(30);
  });
  test('two humps, where the standing set is loudest and as loud, and the carrier in the dip between them', () => {
    expect(humps.loudest).toHaveLength(2);
    const piece = Math.abs(turn.to - turn.from) / points.length;
    for (const hump of humps.loudest) {
      const best = dial.points.find((p) => p.angle > dial.resonance.angle === hump.angle > dial.resonance.angle)!;
      expect(Math.abs(decibels(hump.rms, best.audio))).toBeLessThan(0.3);
      expect(Math.abs(hump.angle - best.angle)).toBeLessThan(2 * piece);
    }
    expect(decibels(humps.loudest[0]!.rms, humps.dip!.rms)).toBeGreaterThan(10);
    expect(Math.abs(humps.dip!.angle - dial.resonance.angle)).toBeLessThan(2 * piece);
  });
  test('frequency rises: the capacitance falls as it is turned, and the whole of the station goes by', () => {
    const { tank } = reception.receiver;
    expect(tank.capacitance(turn.to)).toBeLessThan(tank.capacitance(turn.from));
    for (const p of dial.points)
      expect(Math.abs(turn.from - dial.resonance.angle)).toBeGreaterThan(2 * Math.abs(p.angle - dial.resonance.angle));
  });
});

describe('the meter', () => {
  const turn: DialTurn = { from: 1, to: 2, seconds: 0.5 };
  const wave = (seconds: number, at: (t: number) => number) =>
    Float64Array.from({ length: Math.round(seconds * SOUND_RATE) }, (_, n) => at(n / SOUND_RATE));

  test('a tone by its own line alone: neither a mean, nor its harmonic, nor another tone; blocks of any size', () => {
    const x = wave(
      0.5,
      (t) =>
        3 + Math.SQRT2 * 0.2 * Math.cos(2 * Math.PI * 1000 * t + 1) + Math.cos(2 * Math.PI * 2000 * t) + Math.sin(2 * Math.PI * 60 * t),
    );
    const meter = new DialPassMeter(turn, 1000);
    for (let n = 0; n < x.length; n += 777) meter.add(x.subarray(n, n + 777));
    expect(meter.points).toHaveLength(10);
    for (const [k, p] of meter.points.entries()) {
      expect(p.rms).toBeCloseTo(0.2, 9);
      expect(p.level).toBeCloseTo(-13.979400087, 6);
      expect(p.angle).toBeCloseTo(1.05 + 0.1 * k, 9);
    }
  });
  test('other programmes by all but their mean; nothing is measured after the turn', () => {
    const meter = new DialPassMeter(turn, null);
    meter.add(wave(1, (t) => 3 + Math.SQRT2 * Math.cos(2 * Math.PI * 440 * t)));
    expect(meter.points).toHaveLength(10);
    for (const p of meter.points) expect(p.rms).toBeCloseTo(1, 9);
  });
  test('silence has no hump', () => {
    const meter = new DialPassMeter(turn, 1000);
    meter.add(new Float64Array(SOUND_RATE / 2));
    expect(humpsOf(meter.points, 1.5, 2)).toEqual({ loudest: [], dip: null });
  });
  test('a tone with no whole number of periods in a piece is refused', () => {
    expect(() => new DialPassMeter(turn, 1010)).toThrow(/multiple of 20 Hz/);
  });
});
