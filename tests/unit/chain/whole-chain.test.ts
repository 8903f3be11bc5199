import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { assemble, BANDS, evaluate, type Listener, type Modulation, type Place, powerBudget, type SetDescription, standAt } from '#engine';

/**
 * rival: three complete sets worked by other means from the mast to the sound level.
 * Source: tests/reference/whole-chain/make.py and its output cases.json.
 */
interface Case {
  name: string;
  frequency: number;
  tone: number;
  angle: number;
  modulation: Modulation;
  station: { power?: number; distance?: number; measuredField?: number; mastHeight: number; siteHeight: number; method?: 'free-space' };
  aerial: SetDescription['aerial'];
  tank: SetDescription['tank'];
  detector: { saturationCurrent: number; ideality: number; junctionCapacitance: number };
  phones: Omit<SetDescription['phones'], 'earpiece'> & {
    earpiece:
      | { kind: 'piezo'; capacitance: number; lossTangent: number; leakResistance: number }
      | { kind: 'magnetic'; resistance: number; inductance: number };
  };
  sensitivity: number;
  result: {
    field: number;
    emf: number;
    available: number;
    drive: number;
    intoDetector: number;
    meanOutput: number;
    audioVoltage: number;
    secondHarmonic: number;
    soundLevel: number;
    speechBand: number;
  };
}
const { cases } = JSON.parse(readFileSync(new URL('../../reference/whole-chain/cases.json', import.meta.url), 'utf8')) as { cases: Case[] };

function heard(c: Case) {
  const { power = 1, distance = 5000, measuredField, mastHeight, siteHeight, method = 'auto' } = c.station;
  const place: Place = {
    name: 'Reckoning Green',
    site: { height: siteHeight, surroundings: 'open', ground: { permittivity: 15, conductivity: 1e-3 }, radioNoise: 'rural' },
    method,
    stations: [
      {
        name: 'Slide Rule Hill',
        frequency: c.frequency,
        power,
        polarisation: c.modulation.kind === 'fm' ? 'horizontal' : 'vertical',
        mastHeight,
        position: { distance, bearing: 0 },
        modulation: c.modulation,
        programme: 'speech',
        ...(measuredField === undefined ? {} : { measuredField }),
      },
    ],
  };
  const earpiece: SetDescription['phones']['earpiece'] = {
    name: 'flat',
    coupling: 'insert',
    sensitivity: [
      { frequency: 100, level: c.sensitivity },
      { frequency: 10e3, level: c.sensitivity },
    ],
    sensitivityAt: '1 V',
    coupler: 'IEC 60318-4',
    sensitivitySpread: 3,
    ears: 1,
    ...c.phones.earpiece,
  };
  const set: SetDescription = {
    aerial: c.aerial,
    tank: c.tank,
    detector: { kind: 'junction', seriesResistance: 0, nominalTemperature: 300, temperature: 300, ...c.detector },
    phones: { ...c.phones, earpiece },
  };
  const listener: Listener = {
    ear: { hearingLevel: [], room: { kind: 'noise-criterion', rating: 20 } },
    programme: { tone: c.tone, level: 0 },
  };
  const reception = standAt(place, assemble(set, listener));
  const [signal] = reception.signals;
  const e = evaluate(reception, 0, c.angle);
  return { signal: signal!, e, budget: powerBudget(reception.receiver, signal!, c.angle, e.rest) };
}

const decibels = (a: number, b: number) => 20 * Math.log10(a / b);

describe('from the mast to the sound', () => {
  test('the reference holds both modulations, three ways of joining the aerial, piezo and magnetic phones', () => {
    expect(new Set(cases.map((c) => c.modulation.kind)).size).toBe(2);
    expect(new Set(cases.map((c) => c.tank.aerialCoupling!.kind)).size).toBeGreaterThanOrEqual(2);
    expect(new Set(cases.map((c) => c.phones.earpiece.kind)).size).toBe(2);
  });
  for (const c of cases)
    test(`rival: ${c.name}: every level 0.1 dB`, () => {
      const { signal, e, budget } = heard(c);
      const { result } = c;
      const off = {
        field: decibels(signal.received.field, result.field),
        emf: decibels(signal.emf, result.emf),
        available: decibels(budget.available, result.available) / 2,
        drive: decibels(e.rest.drive, result.drive),
        intoDetector: decibels(budget.intoDetector, result.intoDetector) / 2,
        meanOutput: decibels(e.rated.meanOutput, result.meanOutput),
        audioVoltage: decibels(e.rated.earpiece[1]!, result.audioVoltage),
        soundLevel: e.rated.level[1]! - result.soundLevel,
        speechBand: e.sound.programme[BANDS.indexOf(c.tone)]! - result.speechBand,
      };
      for (const [what, error] of Object.entries(off)) expect(Math.abs(error), what).toBeLessThan(0.1);
      expect(Math.abs(decibels(e.rated.secondHarmonic, result.secondHarmonic))).toBeLessThan(0.5);
    });
});
