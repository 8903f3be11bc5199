import { describe, expect, test } from 'vitest';
import { assemble, bestDial, evaluate, type Reception, type SetDescription, standAt, weaken } from '#engine';
import { listener, place, set, station } from './base-set.ts';

const BOLTZMANN = 1.380649e-23;
const receive = (s: SetDescription, p: ReturnType<typeof place>): Reception => standAt(p, assemble(s, listener));
const tuned = (r: Reception, noisy = r) => {
  const dial = bestDial(r, 0);
  if ('missing' in dial) throw new Error('must tune');
  return evaluate(noisy, 0, dial.points[0]!.angle);
};
const power = (level: number) => 10 ** (level / 10);

describe('noise of the set', () => {
  test('limit: in silence the earpiece has the noise of a resistance beside its capacitance, kT/C between two frequencies (Nyquist 1928)', () => {
    const lossFree: SetDescription = {
      ...set,
      phones: {
        ...set.phones,
        earpiece: { ...set.phones.earpiece, kind: 'piezo', capacitance: 15e-9, lossTangent: 0, leakResistance: 50e6 },
      },
    };
    const e = tuned(weaken(receive(lossFree, place()), 0, 70));
    const volts = e.programmeVoltage * 10 ** (e.noise / 20);
    // the detector at rest beside 500 kohm and 50 Mohm, 15 nF with 470 pF; one-third octaves from 160 Hz to 8 kHz
    const r = 1 / (1 / ((1.05 * 0.025852) / 2e-6 + 20) + 1 / 500e3 + 1 / 50e6);
    const c = 15.47e-9;
    const share = (f: number) => (2 / Math.PI) * Math.atan(2 * Math.PI * f * r * c);
    const expected = Math.sqrt(((BOLTZMANN * 300) / c) * (share(8000 * 2 ** (1 / 6)) - share(160 * 2 ** (-1 / 6))));
    expect(Math.abs(20 * Math.log10(volts / expected))).toBeLessThan(0.25);
  });

  test('limit: noise of the sky beside an AM carrier leaves S/N = m^2 P / (k T0 F B), whatever the detector (textbook, both sidebands)', () => {
    const am = place(station({ frequency: 1e6, modulation: { kind: 'am', depth: 0.8 }, measuredField: 0.01, polarisation: 'vertical' }));
    const mediumWave: SetDescription = {
      ...set,
      aerial: {
        kind: 'electrical',
        impedance: [{ frequency: 1e6, resistance: 50, reactance: -200 }],
        effectiveLength: 4,
        orientation: { kind: 'vertical' },
        frontToBack: 0,
      },
      tank: {
        ...set.tank,
        coil: { kind: 'electrical', inductance: 200e-6, q: 30, frequency: 1e6, selfCapacitance: 8e-12, turns: 60, tapCoupling: 0.95 },
        capacitor: { ...set.tank.capacitor, minimum: 15e-12, maximum: 500e-12 },
        aerialCoupling: { kind: 'tap', turns: 20 },
        detectorCoupling: { kind: 'direct' },
      },
    };
    const r = receive(mediumWave, am);
    // so loud a sky that nothing else counts [dB]
    const figure = 130;
    const loud: Reception = { ...r, signals: r.signals.map((s) => ({ ...s, received: { ...s.received, noiseFigure: figure } })) };
    const { sound, distortion } = tuned(r, loud);
    const available = r.signals[0]!.emf ** 2 / (4 * 50);
    // rms depth in the band of 1 kHz: 12 dB below 0.8, and the band's share of speech up to 4 kHz (Byrne et al. 1994)
    const speech = [38.6, 43.5, 54.4, 57.7, 56.8, 60.2, 60.3, 59.0, 62.1, 62.1, 60.5, 56.8, 53.7, 53.0, 52.0, 48.7, 48.1, 46.8, 45.6];
    const share = power(53.7) / speech.reduce((sum, l) => sum + power(l), 0);
    const depth2 = (0.8 * 10 ** (-12 / 20)) ** 2 * share;
    const band = 1000 * (2 ** (1 / 6) - 2 ** (-1 / 6));
    const expected = 10 * Math.log10((depth2 * available) / (BOLTZMANN * 290 * power(figure) * band));
    // of what disturbs in that band, distortion goes with the programme
    const kilohertz = 8;
    const programme = power(sound.programme[kilohertz]!);
    const noise = power(sound.disturbance[kilohertz]!) - programme * power(distortion);
    expect(Math.abs(10 * Math.log10(programme / noise) - expected)).toBeLessThan(0.3);
  });
});
