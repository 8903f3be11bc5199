import { expect, test } from 'vitest';
import { reportStation, sharpness } from '#engine';
import { armsOf, beginSearch, only, Search, type Space, spaceOf } from '#find';
import { requestOf } from './drawers.ts';

/**
 * A weak station, a coil of many turns on which taps lie close, a detector that stays in square law and an earpiece so deaf that its threshold counts and no noise: what is left to choose is how
 * tightly aerial and detector are joined. By calculus the audio of the slope is greatest where each loads the tank as much as its own losses do: loaded Q = unloaded / 3
 * (maximum of g_s g_d / (g_u + g_s + g_d)^3; the same claim stands in the tests of the chain for an ideal circuit).
 */
function weakSpace(): Space {
  const request = requestOf(
    {
      wires: { thin: { values: { wireDiameter: '0.4 mm' }, tapEvery: '1/4' } },
      formers: [{ diameter: '5 mm', length: '22 mm', stays: { permittivity: 1, lossTangent: 0 } }],
      capacitors: {
        tuning: { values: { minimum: '6 pF', maximum: '9 pF', contactResistance: '5 mohm', leadInductance: '1 nH', lossTangent: 0 } },
      },
      detectors: {
        square: {
          values: {
            kind: 'junction',
            saturationCurrent: '20 uA',
            ideality: 1,
            seriesResistance: 0,
            junctionCapacitance: '0.01 pF',
            nominalTemperature: '20 °C',
          },
        },
      },
      earpieces: {
        low: {
          values: {
            kind: 'magnetic',
            coupling: 'insert',
            sensitivity: '60 dB SPL',
            sensitivityAt: '1 mW',
            coupler: 'IEC 60318-4',
            resistance: '600 ohm',
          },
        },
      },
      rods: [{ length: '75 cm', diameter: '4 mm', metal: 'copper', count: 2 }],
    },
    [0],
    [
      {
        name: 'Far Mast',
        frequency: '98 MHz',
        power: '100 W',
        mastHeight: '50 m',
        distance: '3 km',
        bearing: 'N',
        stereo: false,
        deviation: '30 kHz',
      },
    ],
  );
  const space = spaceOf(request);
  // the resonant dipole alone: lengths are another question
  return { ...space, aerials: space.aerials.filter((a) => a.group.startsWith('dipole of rods')).slice(-1) };
}

test('limit: on the analytic case the search joins aerial and detector so that loaded Q is a third of unloaded Q', {
  timeout: 300_000,
}, () => {
  const space = weakSpace();
  expect(armsOf(space).length).toBeGreaterThan(0);
  const search = new Search(
    space,
    beginSearch(space, { aim: only('loudness'), seed: 1, small: 0, limits: { sharpest: { vhf: 1e9, below: 1e9 }, margin: 0 } }),
  );
  search.step(1500);
  const best = Object.values(search.state.best)
    .filter((s) => s.design.joint === 2)
    .sort((a, b) => b.worth - a.worth)[0]!;
  const { design } = best;
  // both hang on taps, each somewhere between the ends
  expect(design.at).toBeGreaterThan(0);
  expect(design.tap).toBeGreaterThan(0);
  const reception = search.trials.reception(design);
  const { heard } = reportStation(reception, 0);
  const q = sharpness(reception.receiver, reception.signals[0]!, heard!.at.angle, heard!.evaluation.rest)!;
  // taps at quarter turns leave a few per cent
  expect(q.loadedQ / q.unloadedQ).toBeGreaterThan(0.28);
  expect(q.loadedQ / q.unloadedQ).toBeLessThan(0.39);
});
